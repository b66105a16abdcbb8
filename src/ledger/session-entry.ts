import type { AnyReadFile } from '../content/read/files/file-kind.ts';
import type { Guide } from '../content/schema/guide.ts';
import type { Session } from '../content/schema/session.ts';
import { changeFigure } from '../measure/change.ts';
import { type Figure, type FigureOrGap, gap, isFigure } from '../measure/figure.ts';
import { areNinePointAlike } from '../measure/irradiance/bench-procedure.ts';
import { sameDistance } from '../measure/irradiance/same-distance.ts';
import { carriedFigures } from './carried-figures.ts';
import { fileFlags } from './file-figures.ts';
import { madeOf, type SessionMade } from './files/file-maker.ts';
import { flaggedFigures } from './flagged-figures.ts';
import { usedInstruments } from './instruments.ts';
import type { Conditions, SessionEntry, SessionFile } from './ledger.ts';
import type { WorkedLight } from './modelled-light.ts';
import { panelClaims } from './panel-claims.ts';
import type { PanelContext } from './panel-context.ts';
import { panelFlags } from './panel-flags.ts';
import type { SessionBench } from './session-bench.ts';
import { sessionFigures } from './session-figures.ts';

declare module '../measure/statement.ts' {
  interface StatementData {
    /** Why there is no change since the session before. */
    'first-session': object;
    'no-power-to-compare': object;
    'other-conditions': object;
    /** Its light is that of an earlier session. */
    'light-carried-over': object;
  }
}

/** What a session's watts are priced by. */
export interface SessionPrice {
  /** A gap where there is none, or where it is not the current session. */
  figure: FigureOrGap;
  /** Its day, where there is a price. */
  date: string | undefined;
}

/**
 * Works out one session of a panel, each thing from those before it: figures, claims, flags, and what they say with the
 * flags on them.
 *
 * @param earlier the session before; undefined for the first
 */
export function sessionEntry(
  { panel, content, today }: PanelContext,
  bench: SessionBench,
  { price, light: worked }: { price: SessionPrice; light: WorkedLight },
  earlier: SessionEntry | undefined,
): SessionEntry {
  const { id, own: readings, session: used } = bench;
  const { date } = readings;
  const conditions = conditionsOf(used, content.guide.data);
  const instruments = usedInstruments(readings, used, content.instruments);
  const made = sessionFigures(bench, { price: price.figure, light: worked });
  const { light, limits, eyeShares } = made;
  const unflagged = carriedFigures(id, readings, made.figures);
  const claims = panelClaims(
    panel,
    unflagged.figures,
    conditions.distance,
    content.guide.data.wavelengthTolerance.value,
    madeOf(bench.made, 'spectra')?.view.audit,
  );
  const session = { date, readings, used, instruments, claims };
  const flags = [
    ...panelFlags({ panel, session, figures: unflagged.figures, content, today, priceDate: price.date }),
    ...light.flags,
    ...fileFlags(bench, unflagged.figures),
  ];

  const figures = flaggedFigures(unflagged.figures, flags);
  const flagged = (it: Figure): Figure => {
    const found = figures.get(it.metric);
    return isFigure(found) ? found : it;
  };
  return {
    ...session,
    id,
    conditions,
    figures,
    light,
    limits: limits.map((it) => (isFigure(it.figure) ? { ...it, figure: flagged(unflagged.carry(it.figure)) } : it)),
    eyeShares,
    files: bench.files.map(sessionFile),
    made: withoutFlags(bench.made),
    flags,
    claims: claims.map((it) => (it.measured ? { ...it, measured: flagged(it.measured) } : it)),
    change: changeSince({ id, readings, conditions, figures }, earlier),
  };
}

/** What pages say of a file, without what is in it: logs are long. */
function sessionFile({ data: _data, ...told }: AnyReadFile): SessionFile {
  return told;
}

/** What was made of files, without what has told all that it has to tell. */
function withoutFlags(made: SessionMade): SessionMade {
  return new Map([...made].map(([block, { figures, view }]) => [block, { figures, view }]));
}

function conditionsOf(session: Session, guide: Guide): Conditions {
  const distance = (session.distance ?? guide.referenceDistance).value;
  const { methodVersion } = session;
  const same = sameDistance(distance, guide.referenceDistance.value);
  return { distance, methodVersion, isReference: same && areNinePointAlike(methodVersion, guide.methodVersion) };
}

/** Metric id of the change of optical power between sessions. */
const CHANGE = 'optical-power-change';

function changeSince(
  later: Pick<SessionEntry, 'id' | 'readings' | 'conditions' | 'figures'>,
  earlier: SessionEntry | undefined,
): FigureOrGap {
  if (!earlier) return gap(CHANGE, { code: 'first-session' });
  if (later.readings.carried?.light !== undefined) return gap(CHANGE, { code: 'light-carried-over' });
  const [now, before] = [later.figures.get('optical-power'), earlier.figures.get('optical-power')];
  if (!isFigure(now) || !isFigure(before)) return gap(CHANGE, { code: 'no-power-to-compare' });
  const alike =
    sameDistance(later.conditions.distance, earlier.conditions.distance) &&
    areNinePointAlike(later.conditions.methodVersion, earlier.conditions.methodVersion);
  if (!alike) return gap(CHANGE, { code: 'other-conditions' });
  return changeFigure(later.id, CHANGE, now, before);
}

import type { Content } from '../content/read/content.ts';
import type { Guide } from '../content/schema/guide.ts';
import type { InstrumentKind } from '../content/schema/instrument.ts';
import type { Panel } from '../content/schema/panel.ts';
import type { Session } from '../content/schema/session.ts';
import { changeFigure } from '../measure/change.ts';
import { type Figure, type FigureOrGap, gap, isFigure } from '../measure/figure.ts';
import type { Instrument } from '../measure/instrument/instrument.ts';
import { areNinePointAlike } from '../measure/irradiance/bench-procedure.ts';
import { sameDistance } from '../measure/irradiance/same-distance.ts';
import { flaggedFigures } from './flagged-figures.ts';
import { instrumentOf, usedInstruments } from './instruments.ts';
import type { Conditions, SessionEntry } from './ledger.ts';
import { panelClaims } from './panel-claims.ts';
import { panelFlags } from './panel-flags.ts';
import { type SessionContext, sessionFigures } from './session-figures.ts';

declare module '../measure/statement.ts' {
  interface StatementData {
    /** Why there is no change since the session before. */
    'first-session': object;
    'no-power-to-compare': object;
    'other-conditions': object;
  }
}

/** What all sessions of a panel share. */
export interface PanelContext {
  slug: string;
  panel: Panel;
  content: Content;
  /** The day for which the guide is built. */
  today: string;
  field: SessionContext['field'];
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
  { slug, panel, content, today, field }: PanelContext,
  readings: Session,
  price: SessionPrice,
  earlier: SessionEntry | undefined,
): SessionEntry {
  const { date } = readings;
  const id = `${slug}/${date}`;
  const guide = content.guide.data;
  const conditions = conditionsOf(readings, guide);
  const instruments = usedInstruments(readings, content.instruments);
  const unflagged = sessionFigures({
    id,
    slug,
    panel,
    session: readings,
    guide,
    instrumentFor: instrumentFinder(content, readings),
    field,
    price: price.figure,
  });
  const { light, limits, eyeShares } = unflagged;
  const claims = panelClaims(panel, unflagged.figures, conditions.distance);
  const session = { date, readings, instruments, claims };
  const flags = [
    ...panelFlags({ panel, session, figures: unflagged.figures, content, today, priceDate: price.date }),
    ...light.flags,
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
    limits: limits.map((it) => (isFigure(it.figure) ? { ...it, figure: flagged(it.figure) } : it)),
    eyeShares,
    flags,
    claims: claims.map((it) => (it.measured ? { ...it, measured: flagged(it.measured) } : it)),
    change: changeSince({ id, conditions, figures }, earlier),
  };
}

/** The instruments that a session names, by what they read. */
export function instrumentFinder(
  content: Content,
  session: Session | undefined,
): (kind: InstrumentKind) => Instrument | undefined {
  return (kind) => {
    const id = session?.instruments[kind];
    const instrument = id === undefined ? undefined : content.instruments.get(id);
    return session && instrument && instrumentOf(instrument.id, instrument.data, session.date);
  };
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
  later: Pick<SessionEntry, 'id' | 'conditions' | 'figures'>,
  earlier: SessionEntry | undefined,
): FigureOrGap {
  if (!earlier) return gap(CHANGE, { code: 'first-session' });
  const [now, before] = [later.figures.get('optical-power'), earlier.figures.get('optical-power')];
  if (!isFigure(now) || !isFigure(before)) return gap(CHANGE, { code: 'no-power-to-compare' });
  const alike =
    sameDistance(later.conditions.distance, earlier.conditions.distance) &&
    areNinePointAlike(later.conditions.methodVersion, earlier.conditions.methodVersion);
  if (!alike) return gap(CHANGE, { code: 'other-conditions' });
  return changeFigure(later.id, CHANGE, now, before);
}

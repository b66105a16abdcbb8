import { METHODS } from '../measure/methods.ts';
import type { CorrectionEntry } from './corrections.ts';
import type { Ledger, PanelEntry } from './ledger.ts';
import { type PriceMove, priceMoves } from './price-moves.ts';

/** Something that readers of the guide may want to hear of, with the day that the files have for it. */
export type GuideEvent = Happened &
  (
    | { kind: 'tested' | 'retested'; panel: PanelEntry; session: string }
    | { kind: 'withdrawn'; panel: PanelEntry }
    | ({ kind: 'prices' } & PriceMove)
    | { kind: 'methods'; changed: readonly MethodChange[]; added: readonly MethodChange[] }
    | { kind: 'correction'; correction: CorrectionEntry }
  );

interface Happened {
  /** The same in every build, as long as what it tells of is in the files: letters, digits, hyphens. */
  id: string;
  /** `YYYY-MM-DD` */
  date: string;
}

/** A version of a method, as its page tells of it. */
export interface MethodChange {
  id: string;
  name: string;
  version: number;
  change: string;
}

/** In which order things of one day are told. */
const KINDS = ['correction', 'withdrawn', 'methods', 'prices', 'retested', 'tested'] as const satisfies ReadonlyArray<
  GuideEvent['kind']
>;

/**
 * All that has happened in a guide, newest first: tests and re-tests, withdrawals, prices that moved a rank, versions of
 * methods, corrections. From the dates in the files alone, never from the clock or the build: the same content, the same
 * events. Prices and calibrations that grow old are no events.
 */
export function guideEvents(ledger: Ledger): GuideEvent[] {
  const published = [...ledger.panels.values()].filter((it) => it.data.status !== 'draft');
  const all = [
    ...published.flatMap(sessionEvents),
    ...published.flatMap(withdrawal),
    ...priceMoves(ledger).map((move): GuideEvent => ({ kind: 'prices', id: pricesId(move), ...move })),
    ...methodEvents(ledger, firstDay(published)),
    ...ledger.corrections
      .filter((it) => it.panel === undefined || ledger.panels.has(it.panel))
      .map((correction): GuideEvent => ({ kind: 'correction', id: correction.id, date: correction.date, correction })),
  ];
  return all.toSorted(
    (a, b) =>
      b.date.localeCompare(a.date) || KINDS.indexOf(a.kind) - KINDS.indexOf(b.kind) || a.id.localeCompare(b.id, 'en'),
  );
}

/** Panels of one class that were read at other distances have rankings of their own. */
function pricesId({ date, sizeClass, conditions: { isReference, distance, methodVersion } }: PriceMove): string {
  const apart = isReference ? '' : `-${String(distance).replace('.', '-')}cm-v${methodVersion}`;
  return `prices-${date}-${sizeClass.id}${apart}`;
}

/** The first session of a panel is a new test, every later one a re-test; a panel that is yet to be read has neither. */
function sessionEvents(panel: PanelEntry): GuideEvent[] {
  // Drafts are shown to the tester alone.
  const shown = panel.sessions.filter((it) => !it.readings.draft);
  return shown.map(({ date }, i): GuideEvent => {
    const kind = i === shown.length - 1 ? 'tested' : 'retested';
    return { kind, id: `${kind}-${date}-${panel.slug}`, date, panel, session: date };
  });
}

/** A withdrawal whose day nobody wrote down is none that could be dated. */
function withdrawal(panel: PanelEntry): GuideEvent[] {
  const { status, statusDate: date } = panel.data;
  return status === 'withdrawn' && date !== undefined
    ? [{ kind: 'withdrawn', id: `withdrawn-${date}-${panel.slug}`, date, panel }]
    : [];
}

function firstDay(panels: readonly PanelEntry[]): string | undefined {
  return panels.flatMap((it) => it.sessions.map(({ date }) => date)).toSorted()[0];
}

/**
 * Versions of methods, those of one day together: what changes with a new version of the program comes all at once. What
 * there was before the guide's first session is no change of it.
 */
function methodEvents({ methodVersions, today }: Ledger, since: string | undefined): GuideEvent[] {
  if (since === undefined) return [];
  const changes = METHODS.flatMap(({ id, name }) =>
    (methodVersions.get(id) ?? [])
      .filter(({ date }) => date > since && date <= today)
      .map(({ version, date, change }) => ({ id, name, version, date, change })),
  );
  return [...Map.groupBy(changes, (it) => it.date)].map(([date, group]): GuideEvent => {
    const isNew = new Set(group.flatMap((it) => (it.version === 1 ? [it.id] : [])));
    const told = group.map(({ date: _day, ...it }) => it);
    return {
      kind: 'methods',
      id: `methods-${date}`,
      date,
      // Of a method that came on that day later versions of the day are no change to anybody.
      changed: told.filter((it) => !isNew.has(it.id)),
      added: told.filter((it) => it.version === 1),
    };
  });
}

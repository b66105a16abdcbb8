/** What looks wrong in a run as it is typed, with its reason, and which reading would help most: codes, worded by `say`. */
import { mean } from 'simple-statistics';
import { acceptedReadings } from '../../../content/read/grid-points.ts';
import { flagPlace } from '../../../ledger/flag-place.ts';
import type { SessionEntry } from '../../../ledger/ledger.ts';
import type { SinglePanel } from '../../../ledger/panel-entry.ts';
import { type Flag, isFigure } from '../../../measure/figure.ts';
import {
  beyondFinding,
  rangeFinding,
  repeatFinding,
  risingFinding,
  unitSlipFinding,
} from '../../../measure/irradiance/entry-checks.ts';
import { repeatAdvice, worthMost } from '../../../measure/irradiance/next-reading.ts';
import { isCode, type Statement } from '../../../measure/statement.ts';
import type { BenchSetup } from './bench-data.ts';
import { countingValues, type EntryValue, lengthOf, meterOf, readsAt } from './entry-values.ts';
import { isPlace, keysOf, takesRepeats } from './places.ts';
import type { Run } from './run.ts';
import { pathInRun } from './run-path.ts';

/** One thing to know about what has been typed. */
export interface Advice {
  /** `help` is about what to read next; the others are as in the checks of the build. */
  severity: Flag['severity'] | 'help';
  check: string;
  finding: Statement;
  /** What to write instead. */
  hint?: Statement;
  /** Of the entries or the setting that it is about; undefined where it is about the whole run. */
  path?: string;
  /** Ids of these entries. */
  ids: readonly number[];
}

interface Worked {
  panel: SinglePanel;
  session: SessionEntry;
}

const ORDER: readonly Advice['severity'][] = ['impossible', 'doubt', 'note', 'help'];

/** Not of the bench: what the maker says is no measure of a reading, and prices are looked up elsewhere. */
const NOT_OF_BENCH: ReadonlySet<string> = new Set(['beam-claim', 'claims-held', 'price-age']);

/** All advice on a run, the worst first, and in the order of entering. What was accepted with a reason is a note. */
export function adviceOn(
  run: Run,
  setup: BenchSetup,
  worked: Worked | undefined,
  grid: { read: number; of: number },
): Advice[] {
  const all = [
    ...entryAdvice(run, setup),
    ...(worked ? flagAdvice(run, worked) : []),
    ...(worked && grid.read === grid.of ? nextAdvice(run, worked) : []),
  ];
  const accepted = new Set(run.entries.filter((it) => it.accepted !== undefined).map((it) => it.id));
  const isAccepted = ({ ids }: Advice) => ids.length > 0 && ids.every((it) => accepted.has(it));
  return all
    .map((it): Advice => (isAccepted(it) && it.severity === 'doubt' ? { ...it, severity: 'note' } : it))
    .toSorted((a, b) => ORDER.indexOf(a.severity) - ORDER.indexOf(b.severity) || (a.ids[0] ?? 0) - (b.ids[0] ?? 0));
}

/** What can be told of each entry by itself, and by its like. */
function entryAdvice(run: Run, setup: BenchSetup): Advice[] {
  const values = countingValues(run);
  const advice: Advice[] = [];
  const say = (severity: Flag['severity'], check: string, finding: Statement | undefined, ...of: EntryValue[]) => {
    const [first] = of;
    if (finding && first)
      advice.push({ severity, check, finding, path: first.entry.path, ids: of.map((it) => it.entry.id) });
  };
  for (const it of values) {
    const { entry, value, unit, isBound } = it;
    const kind = readsAt(entry.path)?.kind;
    const meter = kind && meterOf(run, setup, kind);
    const { name, range } = meter ?? {};
    if (name && range) say('doubt', 'entry-range', rangeFinding(value, unit, { name, range }, isBound), it);
    const same = values.filter((other) => other.entry.path === entry.path && other !== it && !isBound);
    const before = same.filter((other) => other.entry.id < entry.id).map((other) => other.value);
    if (takesRepeats(entry.path)) say('doubt', 'entry-repeats', repeatFinding(value, before, unit), it);
    if (!isBound) say('doubt', 'entry-unit-slip', unitSlipFinding(value, likeOf(it, values), unit), it);
    const [block] = keysOf(entry.path);
    if (block === 'beyond' && entry.path.endsWith('.on')) say('doubt', 'entry-beyond', aboveEdge(run, it, values), it);
    if ((block === 'beyond' || block === 'distances') && !isBound) {
      say('doubt', 'entry-outwards', rising(run, it, values), it);
    }
  }
  return [...advice, ...placeAdvice(run, values)];
}

/** Entries that have no place, or share one that takes a single reading; and a warm-up that nobody noted. */
function placeAdvice(run: Run, values: readonly EntryValue[]): Advice[] {
  const counting = run.entries.filter((it) => it.struck === undefined);
  const strangers = counting
    .filter((it) => !isPlace(it.path))
    .map(
      ({ id, path }): Advice => ({
        severity: 'doubt',
        check: 'entry-place',
        finding: { code: 'entry-no-place', path },
        path,
        ids: [id],
      }),
    );
  const twice = [...Map.groupBy(counting, (it) => it.path)].flatMap(([path, entries]): Advice[] => {
    const last = entries.at(-1);
    if (entries.length < 2 || !last || takesRepeats(path) || !isPlace(path)) return [];
    const finding: Statement = { code: 'entry-read-twice', counts: last.written };
    return [{ severity: 'note', check: 'entry-twice', finding, path, ids: entries.map((it) => it.id) }];
  });
  const isLit = values.some((it) => readsAt(it.entry.path)?.kind === 'irradiance');
  const isWarm = counting.some((it) => it.path === 'warmUp');
  const warmUp: Advice = {
    severity: 'note',
    check: 'entry-warm-up',
    finding: { code: 'entry-warm-up-missing' },
    path: 'warmUp',
    ids: [],
  };
  return [...strangers, ...twice, ...(isLit && !isWarm ? [warmUp] : [])];
}

/** Readings that should be like one: the other points of the grid, the other modes of a block. */
function likeOf({ entry }: EntryValue, values: readonly EntryValue[]): number[] {
  const family = (path: string) =>
    /^grid\./.test(path)
      ? 'grid'
      : /^peak\./.test(path)
        ? 'peak'
        : /^mains\.(?!standby)/.test(path)
          ? 'mains'
          : undefined;
  const own = family(entry.path);
  if (own === undefined) return [];
  const others = values.filter(
    (it) =>
      it.entry !== entry &&
      !it.isBound &&
      (family(it.entry.path) === own || (own === 'peak' && family(it.entry.path) === 'grid')),
  );
  return others.map((it) => it.value);
}

/** A place past an edge against the grid's outer points along that edge. */
function aboveEdge(run: Run, { entry, value }: EntryValue, values: readonly EntryValue[]): Statement | undefined {
  const edge = run.settings[`beyond[${String(keysOf(entry.path)[1])}].edge`];
  const { rows, columns } = run.grid;
  const points = values.filter((it) => {
    const [block, , row, column] = keysOf(it.entry.path);
    if (block !== 'grid') return false;
    if (edge === 'left' || edge === 'right') return column === (edge === 'left' ? 0 : columns - 1);
    return row === (edge === 'top' ? 0 : rows - 1);
  });
  return points.length === 0 ? undefined : beyondFinding(value, mean(points.map((it) => it.value)));
}

/** A reading of the sweep, or past an edge, against those nearer in. */
function rising(run: Run, { entry, value }: EntryValue, values: readonly EntryValue[]): Statement | undefined {
  const [block, index, field] = keysOf(entry.path);
  if (field === 'off') return undefined;
  const distanceAt = (place: unknown) => {
    const written = run.settings[`${block}[${place}].${block === 'beyond' ? 'past' : 'distance'}`];
    return written === undefined ? undefined : lengthOf(written);
  };
  const edgeAt = (place: unknown) => run.settings[`beyond[${place}].edge`];
  const distance = distanceAt(index);
  if (distance === undefined) return undefined;
  const others = values.flatMap((it) => {
    const [itsBlock, place, itsField] = keysOf(it.entry.path);
    const near = distanceAt(place);
    const isLike = itsBlock === block && itsField === field && place !== index && !it.isBound;
    if (!isLike || near === undefined || (block === 'beyond' && edgeAt(place) !== edgeAt(index))) return [];
    return [{ value: it.value, distance: near }];
  });
  return risingFinding({ value, distance }, others);
}

/** The build's own flags, at their places in the run. */
function flagAdvice(run: Run, { panel, session }: Worked): Advice[] {
  const { slug, data } = panel;
  return session.flags.flatMap((flag): Advice[] => {
    if (NOT_OF_BENCH.has(flag.check) || isWaiting(flag.finding)) return [];
    const keys = flagPlace(flag, { slug, data, session, figures: session.figures });
    const [list, index, ...rest] = keys as Array<string | number>;
    const isOwn = list === 'sessions' && data.sessions[Number(index)]?.date === run.date;
    const isHere = isOwn || list === 'field' || list === 'housing' || keys.length === 0;
    if (!isHere) return [];
    const path = isOwn ? pathInRun(rest, run) : keys.join('.');
    const ids = run.entries.filter((it) => it.struck === undefined && isWithin(it.path, path)).map((it) => it.id);
    const { check, severity, finding, hint } = flag;
    return [{ check, severity, finding, ...(hint && { hint }), ...(path !== '' && { path }), ids }];
  });
}

/** The model of the light waits for the rest of the grid. */
const isWaiting = (it: Statement) => isCode(it, 'beam-withheld') && isCode(it.because, 'grid-not-all-read');

const isWithin = (path: string, whole: string) =>
  whole !== '' && (path === whole || path.startsWith(`${whole}.`) || path.startsWith(`${whole}[`));

/** Whether to go on reading, and what. */
function nextAdvice(run: Run, { session }: Worked): Advice[] {
  const { figures, used } = session;
  const isOwnLight = run.entries.some((it) => it.path.startsWith('grid.'));
  const average = figures.get('mean-irradiance');
  if (!isOwnLight || !isFigure(average)) return [];
  const points = (used.grid?.rows ?? []).flat().map(acceptedReadings);
  const hasBeyond = (used.beyond ?? []).length > 0;
  const help = (check: string, finding: Statement | undefined): Advice[] =>
    finding ? [{ severity: 'help', check, finding, ids: [] }] : [];
  return [
    ...help('next-repeat', repeatAdvice(average, points)),
    ...(['optical-power', 'emitted-power'] as const).flatMap((metric) => {
      const figure = figures.get(metric);
      return isFigure(figure) ? help(`next-${metric}`, worthMost(figure, hasBeyond)) : [];
    }),
  ];
}

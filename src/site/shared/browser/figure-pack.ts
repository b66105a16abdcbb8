import {
  type BudgetComponent,
  type ErrorSource,
  type Figure,
  type FigureOrGap,
  isFigure,
} from '../../../measure/figure.ts';
import { REPEATABILITY, unassessedScatter } from '../../../measure/instrument/instrument.ts';
import { methodOfText, methodText } from '../../../measure/method-versions.ts';
import type { MetricId } from '../../../measure/metrics.ts';
import { type Statement, verbatim } from '../../../measure/statement.ts';
import { coverageFactor } from '../../../measure/uncertainty.ts';

/** JSON has no infinity. */
type PackedNumber = number | 'Infinity' | '-Infinity';

/** What errors have alike: type, distribution, degrees of freedom, of which null stands for infinitely many. */
type PackedKind = [
  type: ErrorSource['type'],
  distribution: ErrorSource['distribution'],
  degreesOfFreedom: number | null,
];

/** One error of the budgets, kept once for all figures of a file: its key, and the place of its kind. */
type PackedLine = [key: string, kind: number];

/** A figure as the browser gets it: what is needed to show it and to calculate with it. */
export interface PackedFigure {
  /** Left out where it is `owner` and the metric. */
  id?: string;
  value: PackedNumber;
  unit: Figure['unit'];
  basis: Figure['basis'];
  method: string;
  bound?: Figure['bound'];
  /** Days of earlier sessions that its readings are from; before them 1 where all are, 0 where newer ones went in too. */
  carried?: [isWhole: 0 | 1, ...from: string[]];
  /** Why there is no uncertainty; then the next four are left out. A place in `texts`. */
  absent?: number;
  /** Why the budget does not hold how readings scatter; left out where it does. A place in `texts`. */
  scatter?: number;
  /** Standard uncertainty. */
  u?: PackedNumber;
  /** The 95 % interval; left out where it is value ± k u to the last digit that is kept. */
  interval?: [PackedNumber, PackedNumber] | null;
  /** Coverage factor; left out where it is that of the normal distribution, null where there is none. */
  k?: PackedNumber | null;
  /** Effective degrees of freedom; left out where there are infinitely many. */
  dof?: number;
  /** Pairs, one after the other: place in the list of lines, contribution to the standard uncertainty. */
  budget?: PackedNumber[];
}

/** Figures and gaps by metric, with what they share: texts, and the errors of their budgets. JSON-safe. */
export interface FigurePack {
  /** What most ids and keys begin with; in a key, OWN stands for it. */
  owner: string;
  kinds: PackedKind[];
  lines: PackedLine[];
  texts: string[];
  figures: Partial<Record<MetricId, PackedFigure | { gap: number }>>;
}

/** No key begins with it. */
const OWN = '~';

/**
 * Digits that are kept: so many more than any figure shows that none is tipped over the edge of its rounding, and a pair
 * that is nearly a tie is told alike here and in the build; fewer than a double has.
 */
const DIGITS = 9;

function packNumber(value: number): PackedNumber {
  if (Number.isNaN(value)) throw new RangeError('a figure holds no number');
  if (!Number.isFinite(value)) return value > 0 ? 'Infinity' : '-Infinity';
  return Number(value.toPrecision(DIGITS));
}

/** The coverage factor of most figures. */
const NORMAL = packNumber(coverageFactor(Number.POSITIVE_INFINITY));

/** A list without repetition, of what is called alike, and where each is in it. */
function table<T>(nameOf: (it: T) => string) {
  const list: T[] = [];
  const places = new Map<string, number>();
  const placeOf = (it: T): number => {
    const name = nameOf(it);
    const place = places.get(name) ?? list.push(it) - 1;
    places.set(name, place);
    return place;
  };
  return { list, placeOf };
}

/**
 * Packs figures and gaps under their metrics; numbers are rounded to nine significant digits.
 *
 * @param say puts what there is to tell into words: a page's script has not the words for everything
 * @param owner what most ids and keys begin with, such as `panel/day/`
 */
export function packFigures(
  given: Iterable<readonly [metric: MetricId, it: FigureOrGap]>,
  say: (it: Statement) => string,
  owner = '',
): FigurePack {
  const kinds = table<PackedKind>((it) => it.join());
  const lines = table<PackedLine>((it) => it.join());
  const texts = table<string>((it) => it);
  const shortKey = (key: string) => (owner !== '' && key.startsWith(owner) ? `${OWN}${key.slice(owner.length)}` : key);
  const placeOf = ({ key, type, distribution, degreesOfFreedom }: ErrorSource): number => {
    const count = Number.isFinite(degreesOfFreedom) ? degreesOfFreedom : null;
    return lines.placeOf([shortKey(key), kinds.placeOf([type, distribution, count])]);
  };
  const pack = (metric: MetricId, it: FigureOrGap): PackedFigure | { gap: number } => {
    if (!isFigure(it)) return { gap: texts.placeOf(say(it.reason)) };
    const { id, unit, basis, method, bound, standardUncertainty: u, degreesOfFreedom } = it;
    const scatter = scatterOf(it, say);
    return {
      ...(id !== owner + metric && { id }),
      value: packNumber(it.value),
      unit,
      basis,
      method: methodText(method),
      ...(bound && { bound }),
      ...(it.carriedOver && { carried: [it.carriedOver.isWhole ? 1 : 0, ...it.carriedOver.from] }),
      ...(u === null
        ? { absent: texts.placeOf(say(it.uncertaintyAbsent ?? { code: 'uncertainty-not-known' })) }
        : {
            u: packNumber(u),
            ...packSpread(it, u),
            ...(degreesOfFreedom !== null && Number.isFinite(degreesOfFreedom) && { dof: degreesOfFreedom }),
            budget: it.budget.flatMap((one) => [placeOf(one.source), packNumber(one.contribution)]),
            ...(scatter !== undefined && { scatter: texts.placeOf(scatter) }),
          }),
    };
  };
  const figures = Object.fromEntries([...given].map(([metric, it]) => [metric, pack(metric, it)]));
  return { owner, kinds: kinds.list, lines: lines.list, texts: texts.list, figures };
}

/** Coverage factor and interval, as far as they are not what the rest says. */
function packSpread({ value, interval95, coverageFactor: k }: Figure, u: number): Pick<PackedFigure, 'k' | 'interval'> {
  const factor = k === null ? null : packNumber(k);
  const interval =
    interval95 && ([packNumber(interval95[0]), packNumber(interval95[1])] satisfies PackedFigure['interval']);
  const usual = usualInterval(packNumber(value), packNumber(u), factor);
  return {
    ...(factor !== NORMAL && { k: factor }),
    ...(String(interval) !== String(usual) && { interval }),
  };
}

/** The interval of value ± k u, of numbers as they are packed. */
function usualInterval(
  value: PackedNumber,
  u: PackedNumber,
  k: PackedNumber | null,
): [PackedNumber, PackedNumber] | null {
  const half = Number(k) * Number(u);
  if (k === null || !Number.isFinite(half) || !Number.isFinite(Number(value))) return null;
  return [packNumber(Number(value) - half), packNumber(Number(value) + half)];
}

function scatterOf({ unassessed }: Figure, say: (it: Statement) => string): string | undefined {
  const silent = unassessedScatter(unassessed);
  return silent && say(silent.reason);
}

/**
 * Figures and gaps again, as every function of measure/ takes them. What only a calculation page shows (the words of the
 * budget, inputs, notes, flags) is empty.
 */
export function unpackFigures({ owner, kinds, lines, texts, figures }: FigurePack): Map<MetricId, FigureOrGap> {
  const text = (place: number) => verbatim(at(texts, place, 'a text'));
  const component = (place: number, contribution: number): BudgetComponent => {
    const [key, kind] = at(lines, place, 'an error');
    const [type, distribution, degreesOfFreedom] = at(kinds, kind, 'a kind of error');
    return {
      source: {
        key: owner !== '' && key.startsWith(OWN) ? owner + key.slice(OWN.length) : key,
        type,
        distribution,
        degreesOfFreedom: degreesOfFreedom ?? Number.POSITIVE_INFINITY,
        what: verbatim(''),
        evaluation: verbatim(''),
      },
      contribution,
    };
  };
  const unpack = (metric: MetricId, it: PackedFigure | { gap: number }): FigureOrGap => {
    if ('gap' in it) return { gap: true, metric, reason: text(it.gap) };
    const { id = owner + metric, unit, basis, method, bound, absent, scatter, u, k = NORMAL, dof, budget = [] } = it;
    const interval = u === undefined || it.interval !== undefined ? it.interval : usualInterval(it.value, u, k);
    return {
      id,
      metric,
      value: Number(it.value),
      unit,
      basis,
      method: methodOfText(method),
      ...(bound && { bound }),
      ...(it.carried && { carriedOver: { isWhole: it.carried[0] === 1, from: it.carried.slice(1) as string[] } }),
      standardUncertainty: u === undefined ? null : Number(u),
      interval95: interval ? [Number(interval[0]), Number(interval[1])] : null,
      coverageFactor: u === undefined || k === null ? null : Number(k),
      degreesOfFreedom: u === undefined ? null : (dof ?? Number.POSITIVE_INFINITY),
      ...(absent !== undefined && { uncertaintyAbsent: text(absent) }),
      budget: budget.flatMap((place, i) => (i % 2 === 0 ? [component(Number(place), Number(budget[i + 1]))] : [])),
      unassessed: scatter === undefined ? [] : [{ what: REPEATABILITY, reason: text(scatter) }],
      inputs: [],
      notes: [],
      flags: [],
    };
  };
  const holds = (metric: string): metric is keyof typeof figures => Object.hasOwn(figures, metric);
  return new Map(
    Object.keys(figures)
      .filter(holds)
      .flatMap((metric) => {
        const it = figures[metric];
        return it ? [[metric, unpack(metric, it)] as const] : [];
      }),
  );
}

function at<T>(list: readonly T[], place: number, what: string): T {
  const it = list[place];
  if (it === undefined) throw new RangeError(`a figure names ${what} that its file does not have`);
  return it;
}

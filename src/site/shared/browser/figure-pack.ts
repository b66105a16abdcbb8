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
import { linePacker, lineUnpacker, type PackedLine } from './packed-keys.ts';
import { COMPARED_METRICS, nameAt, placeOrName } from './packed-names.ts';
import { placeTable } from './place-table.ts';
import { type PackedTexts, packTexts, unpackTexts } from './text-pack.ts';

/** JSON has no infinity. */
type PackedNumber = number | 'Infinity' | '-Infinity';

/** What errors have alike: type, distribution, degrees of freedom, of which null stands for infinitely many. */
type PackedKind = [
  type: ErrorSource['type'],
  distribution: ErrorSource['distribution'],
  degreesOfFreedom: number | null,
];

/** Bases by their places. */
const BASES = ['measured', 'derived', 'modelled', 'claimed'] as const satisfies ReadonlyArray<Figure['basis']>;

/** What many figures have alike besides numbers; last the place in `texts` of why budgets do not hold how readings scatter. */
type PackedForm = [unit: Figure['unit'], basis: number, method: string, scatter?: number];

/**
 * What an error is of a figure, once for all figures of which it is as much: the place of the error in the list of lines,
 * and its contribution in millionths of the value, or of one where the value can't be divided by.
 */
type PackedTerm = [line: number, share: PackedNumber];

/**
 * A figure as the browser gets it: what is needed to show it and to calculate with it. `form` is a place in `forms`;
 * `budget` has places in the list of terms, -1 - place where the term has the other sign.
 */
export type PackedFigure = [value: PackedNumber, form: number, budget?: number[], more?: PackedMore];

/** What few figures have. */
interface PackedMore {
  /** Left out where it is `owner` and the metric. */
  id?: string;
  bound?: Figure['bound'];
  /** Days of earlier sessions that its readings are from; before them 1 where all are, 0 where newer ones went in too. */
  carried?: [isWhole: 0 | 1, ...from: string[]];
  /** Why there is no uncertainty; then the rest is left out. A place in `texts`. */
  absent?: number;
  /** Standard uncertainty; left out where it is what the budget comes to. */
  u?: PackedNumber;
  /** The 95 % interval; left out where it is value ± k u. */
  interval?: [PackedNumber, PackedNumber] | null;
  /** Coverage factor; left out where it is what the interval says, or that of the normal distribution where none is given; null where there is none. */
  k?: PackedNumber | null;
  /** Effective degrees of freedom; left out where there are infinitely many. */
  dof?: number;
}

/** Figures and gaps by metric, with what they share: texts, and the errors of their budgets. JSON-safe. */
export interface FigurePack {
  /** What most ids and keys begin with. */
  owner: string;
  kinds: PackedKind[];
  lines: PackedLine[];
  forms: PackedForm[];
  /** Terms one after another. */
  terms: PackedTerm[number][];
  texts: PackedTexts;
  /** By metric, or by its place among `COMPARED_METRICS`. */
  figures: Record<string, PackedFigure | { gap: number }>;
}

/**
 * Digits that are kept: so many more than any figure shows that none is tipped over the edge of its rounding, and a pair
 * that is nearly a tie is told alike here and in the build; fewer than a double has.
 */
const DIGITS = 9;
/** Of a share in a budget. */
const SHARE_DIGITS = 8;

function packNumber(value: number, digits = DIGITS): PackedNumber {
  if (Number.isNaN(value)) throw new RangeError('a figure holds no number');
  if (!Number.isFinite(value)) return value > 0 ? 'Infinity' : '-Infinity';
  return Number(value.toPrecision(digits));
}

/** Of a number: how far two may lie apart, being told in so many digits, and still be one. */
const SAME = 3e-9;
/** Of a coverage factor, by which a half of an interval is shown, in three digits at most. */
const SAME_FACTOR = 1e-6;
/** Of a figure's uncertainty: less is what the arithmetic of a budget leaves of nothing. */
const NOTHING = 1e-12;

/** What a budget's shares are of. */
const scaleOf = (value: number) => (value !== 0 && Number.isFinite(value) ? value : 1) / 1e6;

/** The uncertainty that a budget comes to. */
const rootSum = (contributions: readonly number[]) => Math.hypot(...contributions);

const isSame = (a: number, b: number, size = Math.abs(b)) => a === b || Math.abs(a - b) <= SAME * size;

/** The coverage factor of most figures. */
const NORMAL = packNumber(coverageFactor(Number.POSITIVE_INFINITY));

/**
 * Packs figures and gaps under their metrics; numbers are rounded to nine significant digits. An error that reaches
 * several figures, such as a meter's calibration, mostly is the same share of each, and is said once.
 *
 * @param say puts what there is to tell into words: a page's script has not the words for everything
 * @param owner what most ids and keys begin with, such as `panel/day/`
 */
export function packFigures(
  given: Iterable<readonly [metric: MetricId, it: FigureOrGap]>,
  say: (it: Statement) => string,
  owner = '',
): FigurePack {
  const kinds = placeTable<PackedKind>((it) => it.join());
  const lines = placeTable<PackedLine>((it) => JSON.stringify(it));
  const forms = placeTable<PackedForm>((it) => it.join());
  const terms = placeTable<PackedTerm>((it) => it.join());
  const texts = placeTable<string>((it) => it);
  const packLine = linePacker(owner);
  const placeOf = ({ key, type, distribution, degreesOfFreedom }: ErrorSource): number => {
    const count = Number.isFinite(degreesOfFreedom) ? degreesOfFreedom : null;
    return lines.placeOf(packLine(key, kinds.placeOf([type, distribution, count])));
  };
  const termOf = ({ source, contribution }: BudgetComponent, scale: number, u: number): number => {
    const share = Math.abs(contribution) < NOTHING * u ? 0 : contribution / scale;
    const place = terms.placeOf([placeOf(source), packNumber(Math.abs(share), SHARE_DIGITS)]);
    return share < 0 ? -1 - place : place;
  };
  const pack = (metric: MetricId, it: FigureOrGap): PackedFigure | { gap: number } => {
    if (!isFigure(it)) return { gap: texts.placeOf(say(it.reason)) };
    const { id, unit, basis, method, bound, standardUncertainty: u, degreesOfFreedom } = it;
    const scatter = u === null ? undefined : scatterOf(it, say);
    const form: PackedForm = [unit, BASES.indexOf(basis), methodText(method)];
    if (scatter !== undefined) form.push(texts.placeOf(scatter));
    const more: PackedMore = {
      ...(id !== owner + metric && { id }),
      ...(bound && { bound }),
      ...(it.carriedOver && { carried: [it.carriedOver.isWhole ? 1 : 0, ...it.carriedOver.from] }),
      ...(u === null
        ? { absent: texts.placeOf(say(it.uncertaintyAbsent ?? { code: 'uncertainty-not-known' })) }
        : {
            ...(!isSame(rootSum(it.budget.map((one) => one.contribution)), u) && { u: packNumber(u) }),
            ...packSpread(it, u),
            ...(degreesOfFreedom !== null && Number.isFinite(degreesOfFreedom) && { dof: degreesOfFreedom }),
          }),
    };
    const budget = u === null ? [] : it.budget.map((one) => termOf(one, scaleOf(it.value), u));
    const packed: PackedFigure = [packNumber(it.value), forms.placeOf(form), budget, more];
    return packed.slice(0, Object.keys(more).length > 0 ? 4 : budget.length > 0 ? 3 : 2) as PackedFigure;
  };
  const figures = Object.fromEntries(
    [...given].map(([metric, it]) => [placeOrName(COMPARED_METRICS, metric), pack(metric, it)]),
  );
  return {
    owner,
    kinds: kinds.list,
    lines: lines.list,
    forms: forms.list,
    terms: terms.list.flat(),
    texts: packTexts(texts.list),
    figures,
  };
}

/** Coverage factor and interval, as far as they are not what the rest says. */
function packSpread({ value, interval95, coverageFactor: k }: Figure, u: number): Pick<PackedMore, 'k' | 'interval'> {
  const factor = k === null ? null : packNumber(k);
  const interval =
    interval95 && ([packNumber(interval95[0]), packNumber(interval95[1])] satisfies PackedMore['interval']);
  const usual = usualInterval(packNumber(value), packNumber(u), factor);
  // Without an end there is nothing that two could lie apart by.
  const size = Math.max(...[value, ...(interval95 ?? [])].map(Math.abs).filter(Number.isFinite));
  const isUsual =
    String(interval) === String(usual) ||
    (interval !== null && usual !== null && interval.every((end, i) => isSame(Number(end), Number(usual[i]), size)));
  if (isUsual) return factor === NORMAL ? {} : { k: factor };
  const said = interval && factorOf(interval, u);
  return {
    ...((said === null || factor === null || Math.abs(said / Number(factor) - 1) > SAME_FACTOR) && { k: factor }),
    interval,
  };
}

/** The coverage factor that an interval says by its width; null where that is none. */
function factorOf([low, high]: readonly [PackedNumber, PackedNumber], u: number): number | null {
  const factor = (Number(high) - Number(low)) / 2 / u;
  return Number.isFinite(factor) ? factor : null;
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
export function unpackFigures({
  owner,
  kinds,
  lines,
  forms,
  terms,
  texts: packedTexts,
  figures,
}: FigurePack): Map<MetricId, FigureOrGap> {
  const texts = unpackTexts(packedTexts);
  const text = (place: number) => verbatim(at(texts, place, 'a text'));
  const unpackLine = lineUnpacker(owner);
  const component = (place: number, contribution: number): BudgetComponent => {
    const [key, kind] = unpackLine(at(lines, place, 'an error'));
    const [type, distribution, degreesOfFreedom] = at(kinds, kind, 'a kind of error');
    return {
      source: {
        key,
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
    const [value, form, budget = [], more = {}] = it;
    const { id = owner + metric, bound, absent, dof } = more;
    const [unit, base, method, scatter] = at(forms, form, 'a form');
    const basis = at(BASES, base, 'a basis');
    const components = budget.map((signed) => {
      const term = 2 * (signed < 0 ? -1 - signed : signed);
      const [place, share] = [term, term + 1].map((i) => Number(at(terms, i, 'a part of a budget')));
      return component(place ?? 0, Number(share) * scaleOf(Number(value)) * (signed < 0 ? -1 : 1));
    });
    const u = absent === undefined ? Number(more.u ?? rootSum(components.map((one) => one.contribution))) : undefined;
    const said = more.interval && u !== undefined ? factorOf(more.interval, u) : null;
    const k = more.k === undefined ? (said ?? NORMAL) : more.k;
    const interval = u === undefined || more.interval !== undefined ? more.interval : usualInterval(value, u, k);
    return {
      id,
      metric,
      value: Number(value),
      unit,
      basis,
      method: methodOfText(method),
      ...(bound && { bound }),
      ...(more.carried && { carriedOver: { isWhole: more.carried[0] === 1, from: more.carried.slice(1) as string[] } }),
      standardUncertainty: u ?? null,
      interval95: interval ? [Number(interval[0]), Number(interval[1])] : null,
      coverageFactor: u === undefined || k === null ? null : Number(k),
      degreesOfFreedom: u === undefined ? null : (dof ?? Number.POSITIVE_INFINITY),
      ...(absent !== undefined && { uncertaintyAbsent: text(absent) }),
      budget: components,
      unassessed: scatter === undefined ? [] : [{ what: REPEATABILITY, reason: text(scatter) }],
      inputs: [],
      notes: [],
      flags: [],
    };
  };
  return new Map(
    Object.entries(figures).map(([name, it]) => {
      const metric = nameAt(COMPARED_METRICS, /^\d+$/.test(name) ? Number(name) : name) as MetricId;
      return [metric, unpack(metric, it)] as const;
    }),
  );
}

function at<T>(list: readonly T[], place: number, what: string): T {
  const it = list[place];
  if (it === undefined) throw new RangeError(`a figure names ${what} that its file does not have`);
  return it;
}

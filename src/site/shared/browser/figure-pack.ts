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

/** JSON has no infinity. */
type PackedNumber = number | 'Infinity' | '-Infinity';

/** One error of the budgets, kept once for all figures of a file. */
export interface PackedLine {
  key: string;
  type: ErrorSource['type'];
  distribution: ErrorSource['distribution'];
  /** Null: infinitely many. */
  degreesOfFreedom: number | null;
}

/** A figure as the browser gets it: what is needed to show it and to calculate with it. */
export interface PackedFigure {
  id: string;
  value: PackedNumber;
  unit: Figure['unit'];
  basis: Figure['basis'];
  method: string;
  bound?: Figure['bound'];
  /** Why there is no uncertainty; then the next four are left out. */
  absent?: string;
  /** Why the budget does not hold how readings scatter; left out where it does. */
  scatter?: string;
  /** Standard uncertainty. */
  u?: PackedNumber;
  /** The 95 % interval. */
  interval?: [PackedNumber, PackedNumber];
  /** Coverage factor; left out where there is none. */
  k?: PackedNumber;
  /** Effective degrees of freedom; left out where there are infinitely many. */
  dof?: number;
  /** Pairs: place in the list of lines, contribution to the standard uncertainty. */
  budget?: Array<[line: number, contribution: PackedNumber]>;
}

/** Figures and gaps by metric, with the errors that their budgets share. JSON-safe. */
export interface FigurePack {
  lines: PackedLine[];
  figures: Partial<Record<MetricId, PackedFigure | { gap: string }>>;
}

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

/**
 * Packs figures and gaps under their metrics; numbers are rounded to nine significant digits.
 *
 * @param say puts what there is to tell into words: a page's script has not the words for everything
 */
export function packFigures(
  given: Iterable<readonly [metric: MetricId, it: FigureOrGap]>,
  say: (it: Statement) => string,
): FigurePack {
  const lines: PackedLine[] = [];
  const places = new Map<string, number>();
  const placeOf = ({ key, type, distribution, degreesOfFreedom }: ErrorSource): number => {
    const name = JSON.stringify([key, type, distribution, String(degreesOfFreedom)]);
    let place = places.get(name);
    if (place === undefined) {
      const count = Number.isFinite(degreesOfFreedom) ? degreesOfFreedom : null;
      place = lines.push({ key, type, distribution, degreesOfFreedom: count }) - 1;
      places.set(name, place);
    }
    return place;
  };
  const pack = (it: FigureOrGap): PackedFigure | { gap: string } => {
    if (!isFigure(it)) return { gap: say(it.reason) };
    const { id, unit, basis, method, bound, standardUncertainty: u, interval95, coverageFactor, degreesOfFreedom } = it;
    return {
      id,
      value: packNumber(it.value),
      unit,
      basis,
      method: methodText(method),
      ...(bound && { bound }),
      ...(u === null
        ? { absent: say(it.uncertaintyAbsent ?? { code: 'uncertainty-not-known' }) }
        : {
            u: packNumber(u),
            ...(interval95 && { interval: [packNumber(interval95[0]), packNumber(interval95[1])] as const }),
            ...(coverageFactor !== null && { k: packNumber(coverageFactor) }),
            ...(degreesOfFreedom !== null && Number.isFinite(degreesOfFreedom) && { dof: degreesOfFreedom }),
            budget: it.budget.map((one): [number, PackedNumber] => [placeOf(one.source), packNumber(one.contribution)]),
            ...scatterOf(it, say),
          }),
    } as PackedFigure;
  };
  const figures = Object.fromEntries([...given].map(([metric, it]) => [metric, pack(it)]));
  return { lines, figures };
}

function scatterOf({ unassessed }: Figure, say: (it: Statement) => string): Pick<PackedFigure, 'scatter'> {
  const silent = unassessedScatter(unassessed);
  return silent ? { scatter: say(silent.reason) } : {};
}

/**
 * Figures and gaps again, as every function of measure/ takes them. What only a calculation page shows (the words of the
 * budget, inputs, notes, flags) is empty.
 */
export function unpackFigures({ lines, figures }: FigurePack): Map<MetricId, FigureOrGap> {
  const unpack = (metric: MetricId, it: PackedFigure | { gap: string }): FigureOrGap => {
    if ('gap' in it) return { gap: true, metric, reason: verbatim(it.gap) };
    const { id, unit, basis, method, bound, absent, scatter, u, interval, k, dof, budget = [] } = it;
    return {
      id,
      metric,
      value: Number(it.value),
      unit,
      basis,
      method: methodOfText(method),
      ...(bound && { bound }),
      standardUncertainty: u === undefined ? null : Number(u),
      interval95: interval ? [Number(interval[0]), Number(interval[1])] : null,
      coverageFactor: k === undefined ? null : Number(k),
      degreesOfFreedom: u === undefined ? null : (dof ?? Number.POSITIVE_INFINITY),
      ...(absent !== undefined && { uncertaintyAbsent: verbatim(absent) }),
      budget: budget.map(([place, contribution]) => unpackLine(lines[place], Number(contribution))),
      unassessed: scatter === undefined ? [] : [{ what: REPEATABILITY, reason: verbatim(scatter) }],
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

function unpackLine(line: PackedLine | undefined, contribution: number): BudgetComponent {
  if (!line) throw new RangeError('a budget names an error that its file does not have');
  const { key, type, distribution, degreesOfFreedom } = line;
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
}

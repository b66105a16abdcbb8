import { mean as average, sampleStandardDeviation } from 'simple-statistics';
import { at } from '../at.ts';
import { type BudgetComponent, type Figure, type FigureOrGap, gap } from '../figure.ts';
import {
  angularComponents,
  calibrationComponents,
  type Instrument,
  instrumentAbsence,
  isCalibrated,
  missingRepeatability,
  REPEATABILITY,
  resolutionComponents,
} from '../instrument/instrument.ts';
import { identityOf, type ListedMetricId } from '../metrics.ts';
import { number } from '../numbers.ts';
import type { Statement } from '../statement.ts';
import { type FigureIdentity, makeFigure, productFigure, typeA, typeB } from '../uncertainty.ts';
import type { Repeats } from './repeats.ts';

declare module '../statement.ts' {
  interface StatementData {
    'one-grid-point': object;
    'repeats-pooled-over-points': object;
    'repeatability-at-each-point': object;
  }
}

/** How even the light is over a grid. */
export interface UniformityFigures {
  /** Lowest point over the mean, %. */
  lowestToMean: FigureOrGap;
  /** Highest point over the mean, %. */
  highestToMean: FigureOrGap;
  /** Coefficient of variation over the points, %. */
  variation: FigureOrGap;
}

/** A point of a grid with accepted readings. */
export interface GridPoint {
  /** Its place in the grid, row by row. */
  place: number;
  /** Mean of its accepted readings, mW/cm2, and how many those are. */
  value: number;
  count: number;
  /** Relative error from the angles at which light reaches it: one error of the instrument, that shows unevenly. */
  oblique: number;
}

/** What they follow from. */
export interface UniformityInputs {
  /** `<panel>/<date>` */
  session: string;
  instrument: Instrument | undefined;
  points: readonly GridPoint[];
  /** Scatter of repeats at a point, where there were any. */
  repeats: Repeats | undefined;
  /** Mean over the points with equal weights. */
  mean: Figure;
  /** Errors that all readings share, as they show at a value with its error of oblique light, mW/cm2. */
  common: (value: number, obliqueError: number) => BudgetComponent[];
}

const LOWEST = 'uniformity-lowest';
const HIGHEST = 'uniformity-highest';
const VARIATION = 'uniformity-variation' as const;

/** The same gap for all three. */
export function uniformityGaps(reason: Statement): UniformityFigures {
  return {
    lowestToMean: gap(LOWEST, reason),
    highestToMean: gap(HIGHEST, reason),
    variation: gap(VARIATION, reason),
  };
}

/**
 * Lowest and highest point over the mean, and the coefficient of variation over the points (common practice, no
 * source). A single point has none of them.
 */
export function uniformityFigures(inputs: UniformityInputs): UniformityFigures {
  const [first, ...others] = inputs.points;
  if (!first || others.length === 0) return uniformityGaps({ code: 'one-grid-point' });
  // The first of equal ones.
  const lowest = others.reduce((best, it) => (it.value < best.value ? it : best), first);
  const highest = others.reduce((best, it) => (it.value > best.value ? it : best), first);
  return {
    lowestToMean: pointToMean(inputs, LOWEST, lowest, 'E_min'),
    highestToMean: pointToMean(inputs, HIGHEST, highest, 'E_max'),
    variation: variation(inputs),
  };
}

/**
 * A point over the mean, r = E_r / mean, %. The mean holds the point itself, so the two are not independent: the ratio
 * moves with point i by (delta_ir - r/n) / mean (JCGM 100:2008, 5.1.2). What all readings share cancels as far as it
 * is a factor; an offset does not.
 */
function pointToMean(inputs: UniformityInputs, metric: ListedMetricId, point: GridPoint, symbol: string): Figure {
  const { session, instrument, points, mean, common } = inputs;
  const { value } = point;
  const ratio = value / mean.value;
  const identity = {
    ...identityOf(metric, session),
    basis: 'derived' as const,
    inputs: [`${session}/grid/${point.place}`, mean.id],
    calculation: `${symbol} ÷ Ē = ${number(value)} mW/cm² ÷ ${number(mean.value)} mW/cm² = ${number(100 * ratio)} %`,
    notes: mean.notes,
  };
  if (!isCalibrated(instrument)) return makeFigure(identity, 100 * ratio, { absent: instrumentAbsence(instrument) });
  const shared = (of: number, oblique: number, name: string): Figure =>
    makeFigure(
      { id: `${identity.id}/${name}`, metric, unit: 'mW/cm²', basis: 'measured', method: mean.method, inputs: [] },
      of,
      { budget: common(of, oblique) },
    );
  const cancelled = productFigure(
    identity,
    [
      { figure: shared(value, value * point.oblique, 'point'), power: 1 },
      { figure: shared(mean.value, average(obliqueErrorsOf(inputs)), 'mean'), power: -1 },
    ],
    100,
  );
  const sensitivities = points.map((it) => (100 * ((it === point ? 1 : 0) - ratio / points.length)) / mean.value);
  return makeFigure(identity, 100 * ratio, {
    budget: [...cancelled.budget, ...ownComponents(inputs, instrument, identity, sensitivities)],
    unassessed: unassessedOf(inputs, instrument),
  });
}

/**
 * Coefficient of variation over the points, CV = s / mean, %. It moves with point i by
 * (E_i - mean) / ((n - 1) s mean) - s / (n mean^2): through the standard deviation, and through the mean beneath it.
 * A common factor cancels, and an offset moves the mean alone.
 */
function variation(inputs: UniformityInputs): Figure {
  const { session, instrument, points, mean } = inputs;
  const values = points.map((it) => it.value);
  const n = values.length;
  const s = sampleStandardDeviation(values);
  const value = (100 * s) / mean.value;
  const identity = {
    ...identityOf(VARIATION, session),
    basis: 'derived' as const,
    inputs: [`${session}/grid`, mean.id],
    calculation: `CV = s ÷ Ē = ${number(s)} mW/cm² ÷ ${number(mean.value)} mW/cm² = ${number(value)} %`,
    notes: mean.notes,
  };
  if (!isCalibrated(instrument)) return makeFigure(identity, value, { absent: instrumentAbsence(instrument) });
  const sensitivities = values.map((it) => {
    // Equal readings have no direction in which s would move: each is given its share of what scatter makes of it.
    const ofSpread = s > 0 ? (it - mean.value) / ((n - 1) * s) : 1 / Math.sqrt(n * (n - 1));
    return 100 * (ofSpread / mean.value - s / (n * mean.value ** 2));
  });
  const offset = calibrationComponents(instrument, 0)
    .filter((it) => it.source.key.endsWith('/offset'))
    .map(({ source, contribution }) => ({ source, contribution: (-value * contribution) / mean.value }));
  // Oblique light is one error of the instrument, which shows more at some points than at others.
  const oblique = obliqueErrorsOf(inputs).reduce((sum, it, i) => sum + it * at(sensitivities, i), 0);
  return makeFigure(identity, value, {
    budget: [
      ...offset,
      ...angularComponents(instrument, session, oblique),
      ...ownComponents(inputs, instrument, identity, sensitivities),
    ],
    unassessed: unassessedOf(inputs, instrument),
  });
}

/** Error of oblique light at each point, mW/cm2. */
function obliqueErrorsOf({ points }: UniformityInputs): number[] {
  return points.map((it) => it.value * it.oblique);
}

/** What each reading is off by on its own: rounding, and scatter at its own reading, each by its sensitivity. */
function ownComponents(
  { points, repeats }: UniformityInputs,
  instrument: Instrument,
  { id }: Pick<FigureIdentity, 'id'>,
  sensitivities: readonly number[],
): BudgetComponent[] {
  const components: BudgetComponent[] = resolutionComponents(instrument, id, Math.hypot(...sensitivities)).map(
    (it) => ({
      ...it,
      source: { ...it.source, evaluation: { code: 'half-step-each' } },
    }),
  );
  const scatter = Math.hypot(
    ...points.map(({ value, count }, i) => {
      const own = repeats?.standardDeviation ?? (instrument.repeatability ?? 0) * value;
      return (at(sensitivities, i) * own) / Math.sqrt(count);
    }),
  );
  if (scatter > 0) {
    const key = `${id}/repeatability`;
    components.push({
      source: repeats
        ? typeA({ key, what: REPEATABILITY, evaluation: { code: 'repeats-pooled-over-points' } }, repeats)
        : typeB({
            key,
            what: REPEATABILITY,
            distribution: 'normal',
            evaluation: { code: 'repeatability-at-each-point' },
          }),
      contribution: scatter,
    });
  }
  return components;
}

function unassessedOf({ mean, repeats }: UniformityInputs, instrument: Instrument) {
  // What the mean could not assess and is no common factor; oblique light and the like cancel.
  return mean.standardUncertainty === null || repeats ? [] : missingRepeatability(instrument);
}

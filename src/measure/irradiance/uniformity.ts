import { mean as average, sampleStandardDeviation } from 'simple-statistics';
import { type BudgetComponent, type Figure, type FigureOrGap, gap } from '../figure.ts';
import {
  angularComponents,
  calibrationComponents,
  type Instrument,
  instrumentAbsence,
  isCalibrated,
  missingRepeatability,
  resolutionComponents,
} from '../instrument/instrument.ts';
import { methodReference } from '../method-versions.ts';
import type { MetricId } from '../metrics.ts';
import { number } from '../numbers.ts';
import { type FigureIdentity, makeFigure, productFigure } from '../uncertainty.ts';
import type { Repeats } from './grid.ts';

/** How even the light is over a grid. */
export interface UniformityFigures {
  /** Lowest point over the mean, %. */
  lowestToMean: FigureOrGap;
  /** Highest point over the mean, %. */
  highestToMean: FigureOrGap;
  /** Coefficient of variation over the points, %. */
  variation: FigureOrGap;
}

/** What they follow from. */
export interface UniformityInputs {
  /** `<panel>/<date>` */
  session: string;
  instrument: Instrument | undefined;
  /** Mean of the kept readings of each point with any, mW/cm2, and how many those are. */
  values: readonly number[];
  counts: readonly number[];
  /** The place of each in the grid, row by row. */
  places: readonly number[];
  /** Scatter of repeats at a point, where there were any. */
  repeats: Repeats | undefined;
  /** Mean over the points with equal weights. */
  mean: Figure;
  /** Relative error of each from the angles at which light reaches it: one error of the meter, that shows unevenly. */
  oblique: readonly number[];
  /** Errors that all readings share, as they show at a value with its error of oblique light, mW/cm2. */
  common: (value: number, obliqueError: number) => BudgetComponent[];
}

const LOWEST = 'uniformity-lowest';
const HIGHEST = 'uniformity-highest';
const VARIATION = 'uniformity-variation' as const;

/** The same gap for all three. */
export function uniformityGaps(reason: string): UniformityFigures {
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
  const { values } = inputs;
  if (values.length < 2) return uniformityGaps('one grid point only');
  return {
    lowestToMean: pointToMean(inputs, LOWEST, values.indexOf(Math.min(...values)), 'E_min'),
    highestToMean: pointToMean(inputs, HIGHEST, values.indexOf(Math.max(...values)), 'E_max'),
    variation: variation(inputs),
  };
}

/**
 * A point over the mean, r = E_r / mean, %. The mean holds the point itself, so the two are not independent: the ratio
 * moves with point i by (delta_ir - r/n) / mean (JCGM 100:2008, 5.1.2). What all readings share cancels as far as it
 * is a factor; an offset does not.
 */
function pointToMean(inputs: UniformityInputs, metric: MetricId, at: number, symbol: string): Figure {
  const { session, instrument, values, mean, common } = inputs;
  const value = values[at] ?? Number.NaN;
  const ratio = value / mean.value;
  const identity = {
    id: `${session}/${metric}`,
    metric,
    unit: '%' as const,
    basis: 'derived' as const,
    method: methodReference('uniformity'),
    inputs: [`${session}/grid/${inputs.places[at]}`, mean.id],
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
      { figure: shared(value, value * (inputs.oblique[at] ?? 0), 'point'), power: 1 },
      { figure: shared(mean.value, average(obliqueErrorsOf(inputs)), 'mean'), power: -1 },
    ],
    100,
  );
  const sensitivities = values.map((_, i) => (100 * ((i === at ? 1 : 0) - ratio / values.length)) / mean.value);
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
  const { session, instrument, values, mean } = inputs;
  const n = values.length;
  const s = sampleStandardDeviation([...values]);
  const value = (100 * s) / mean.value;
  const identity = {
    id: `${session}/${VARIATION}`,
    metric: VARIATION,
    unit: '%' as const,
    basis: 'derived' as const,
    method: methodReference('uniformity'),
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
  // Oblique light is one error of the meter, which shows more at some points than at others.
  const oblique = obliqueErrorsOf(inputs).reduce((sum, it, i) => sum + it * (sensitivities[i] ?? 0), 0);
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
function obliqueErrorsOf({ values, oblique }: UniformityInputs): number[] {
  return values.map((value, i) => value * (oblique[i] ?? 0));
}

/** What each reading is off by on its own: rounding, and scatter at its own reading, each by its sensitivity. */
function ownComponents(
  { values, counts, repeats }: UniformityInputs,
  instrument: Instrument,
  { id }: Pick<FigureIdentity, 'id'>,
  sensitivities: readonly number[],
): BudgetComponent[] {
  const lines: BudgetComponent[] = resolutionComponents(instrument, id, Math.hypot(...sensitivities)).map((it) => ({
    ...it,
    source: { ...it.source, evaluation: 'half a step either way a reading, rectangular' },
  }));
  const scatter = Math.hypot(
    ...sensitivities.map((sensitivity, i) => {
      const own = repeats?.standardDeviation ?? (instrument.repeatability ?? 0) * (values[i] ?? 0);
      return (sensitivity * own) / Math.sqrt(counts[i] ?? 1);
    }),
  );
  if (scatter > 0) {
    lines.push({
      source: {
        key: `${id}/repeatability`,
        what: 'Repeatability',
        type: repeats ? 'A' : 'B',
        distribution: repeats ? 't' : 'normal',
        degreesOfFreedom: repeats?.degreesOfFreedom ?? Number.POSITIVE_INFINITY,
        evaluation: repeats
          ? 'pooled over the points with repeats'
          : 'from the instrument file, at each point’s own reading: no repeats in the session',
      },
      contribution: scatter,
    });
  }
  return lines;
}

function unassessedOf({ mean, repeats }: UniformityInputs, instrument: Instrument) {
  // What the mean could not assess and is no common factor; oblique light and the like cancel.
  return mean.standardUncertainty === null || repeats ? [] : missingRepeatability(instrument);
}

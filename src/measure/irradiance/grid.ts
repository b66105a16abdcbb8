import { mean } from 'simple-statistics';
import { at } from '../at.ts';
import type { BudgetComponent, Figure, FigureOrGap } from '../figure.ts';
import { gap } from '../figure.ts';
import { obliqueError } from '../instrument/angular-response.ts';
import { correctedMeter, correctionInput, correctionNotes, correctionOf } from '../instrument/corrected-reading.ts';
import {
  type Instrument,
  instrumentAbsence,
  isCalibrated,
  missingRepeatability,
  repeatabilityComponents,
  resolutionComponents,
} from '../instrument/instrument.ts';
import { type ModeLight, SHARES_UNKNOWN } from '../instrument/spectral-response.ts';
import { identityOf, type ListedMetricId } from '../metrics.ts';
import { number } from '../numbers.ts';
import type { Statement } from '../statement.ts';
import { makeFigure, typeA, type UncertaintyKnowledge } from '../uncertainty.ts';
import { type DistanceSetting, litField } from './distance-setting.ts';
import type { GridGeometry } from './grid-geometry.ts';
import { lightComponents, missingOfLight } from './light-errors.ts';
import { pooledRepeats, type Repeats } from './repeats.ts';
import { type GridPoint, type UniformityFigures, uniformityFigures, uniformityGaps } from './uniformity.ts';

declare module '../statement.ts' {
  interface StatementData {
    'grid-all-rejected': object;
    'grid-points-empty': { empty: number; of: number };
    'repeats-at-a-point': object;
    /** Standard deviation in mW/cm2. */
    'repeats-pooled': { standardDeviation: number; degreesOfFreedom: number };
    /** The different shares of the cells, and the mean that they make, mW/cm2. */
    'cell-mean-calculation': { shares: readonly number[]; mean: number };
  }
}

/** A grid as it was read: rows from the top, points from the left, each with the readings that were accepted. */
export interface GridReadings {
  /** Accepted readings of each point, mW/cm2; empty where all of them were rejected. */
  points: readonly (readonly (readonly number[])[])[];
  /** Where it was read, for ids: `<panel>/<date>`. */
  session: string;
  instrument: Instrument | undefined;
  distance: DistanceSetting;
  /** How the light is shared out, all of it in either band where it is left out, and what its readings are corrected by. */
  bands?: ModeLight;
}

/** All figures of one grid. */
export interface GridFigures extends UniformityFigures {
  mean: FigureOrGap;
  cellMean: FigureOrGap;
}

const METRICS = {
  mean: 'mean-irradiance',
  cellMean: 'mean-irradiance-by-cells',
} as const;

/** The same gap for every figure of a grid. */
export function gridGaps(reason: Statement): GridFigures {
  return {
    mean: gap(METRICS.mean, reason),
    cellMean: gap(METRICS.cellMean, reason),
    ...uniformityGaps(reason),
  };
}

/**
 * Figures of a grid of irradiance readings: the mean over its points with equal weights (common practice, no
 * source) and, as a check, weighted by the points' cells; lowest and highest point over the mean; and the
 * coefficient of variation over the points. The spread between points is the panel's non-uniformity. It is
 * not an uncertainty of the mean, and no part of it enters any budget.
 *
 * @param geometry for the cells; a statement says why there is none
 */
export function gridFigures(read: GridReadings, geometry: GridGeometry | Statement): GridFigures {
  const factor = correctionOf(read.bands);
  const grid = correctedGrid(read, factor);
  const cells = isThere(geometry) ? geometry.shares.flat() : [];
  const flat = grid.points.flat();
  const oblique = obliqueErrors(grid, geometry);
  const points = flat
    .map((readings, place) => ({ readings, place, oblique: oblique?.[place] ?? 0 }))
    .filter((it) => it.readings.length > 0)
    .map(({ readings, ...it }): GridPoint => ({ ...it, value: mean([...readings]), count: readings.length }));
  if (points.length === 0) return gridGaps({ code: 'grid-all-rejected' });

  const empty = flat.length - points.length;
  const notes: Statement[] = [
    ...(empty > 0 ? [{ code: 'grid-points-empty', empty, of: flat.length } as const] : []),
    ...correctionNotes(grid.bands),
  ];
  const times = grid.bands?.mismatch ? `${number(factor)} × ` : '';
  const repeats = pooledRepeats(flat);

  const weightedMean = (
    metric: ListedMetricId,
    weightOf: (point: GridPoint) => number,
    calculation: (mean: number) => string | Statement,
  ): Figure => {
    const weights = points.map(weightOf);
    const total = weights.reduce((sum, w) => sum + w, 0);
    const weighted = points.map((point) => ({ ...point, share: weightOf(point) / total }));
    const value = weighted.reduce((sum, it) => sum + it.value * it.share, 0);
    return makeFigure(
      {
        ...identityOf(metric, grid.session),
        basis: 'derived',
        inputs: [`${grid.session}/grid`, ...correctionInput(grid.bands)],
        calculation: calculation(value),
        notes,
      },
      value,
      gridKnowledge(grid, weighted, repeats, value),
    );
  };

  const equal = weightedMean(
    METRICS.mean,
    () => 1,
    (value) =>
      `Ē = ${times}(${points.map((it) => number(it.value / factor)).join(' + ')}) ÷ ${points.length} = ${number(value)} mW/cm²`,
  );
  return {
    mean: equal,
    cellMean: !isThere(geometry)
      ? gap(METRICS.cellMean, geometry)
      : weightedMean(
          METRICS.cellMean,
          (it) => at(cells, it.place),
          (value) => ({ code: 'cell-mean-calculation', shares: cells, mean: value }),
        ),
    ...uniformityFigures({
      session: grid.session,
      instrument: grid.instrument,
      points,
      repeats,
      mean: equal,
      common: (value, obliqueError) => commonComponents(grid, value, obliqueError),
    }),
  };
}

/** All of a grid as it stands once its readings are multiplied by the factor of its light. */
function correctedGrid(read: GridReadings, factor: number): GridReadings {
  if (!read.bands?.mismatch) return read;
  return {
    ...read,
    points: read.points.map((row) => row.map((readings) => readings.map((it) => it * factor))),
    instrument: correctedMeter(read.instrument, read.bands),
  };
}

/** True where there is a geometry, and not the reason why there is none. */
function isThere(it: GridGeometry | Statement): it is GridGeometry {
  return !('code' in it);
}

/** Errors that all readings of a grid share, as they show at a value; that of oblique light as it was found, mW/cm2. */
function commonComponents(
  { instrument, distance, session, bands = SHARES_UNKNOWN }: GridReadings,
  value: number,
  oblique: number,
): BudgetComponent[] {
  if (!instrument) return [];
  return lightComponents({ instrument, session, distance, bands }, value, oblique);
}

/**
 * Relative error of the instrument at each point from the angles at which the field's light reaches it, row by row;
 * undefined where its angular response is not known.
 */
function obliqueErrors(
  { instrument, points, distance }: GridReadings,
  geometry: GridGeometry | Statement,
): number[] | undefined {
  const response = instrument?.angularResponse;
  if (!response) return undefined;
  const field = litField(distance);
  return points.flatMap((row, j) =>
    row.map((_, i) =>
      obliqueError(response, field, !isThere(geometry) ? undefined : { x: at(geometry.x, i), y: at(geometry.y, j) }),
    ),
  );
}

/** @param points each with its share in the mean, which sum to 1 */
function gridKnowledge(
  grid: GridReadings,
  points: ReadonlyArray<GridPoint & { share: number }>,
  repeats: Repeats | undefined,
  value: number,
): UncertaintyKnowledge {
  const { instrument, session, bands = SHARES_UNKNOWN } = grid;
  if (!isCalibrated(instrument)) return { absent: instrumentAbsence(instrument) };
  const oblique = points.reduce((sum, it) => sum + it.share * it.value * it.oblique, 0);
  // Points round and scatter each on their own: root of the sum of squared weights; 1/sqrt n for equal ones.
  const spreadShare = Math.hypot(...points.map((it) => it.share));
  const key = `${session}/grid`;
  const budget: BudgetComponent[] = [
    ...commonComponents(grid, value, oblique),
    ...resolutionComponents(instrument, key, spreadShare),
  ];
  if (repeats) {
    const scatterShare = Math.sqrt(points.reduce((sum, it) => sum + it.share ** 2 / it.count, 0));
    budget.push({
      source: typeA(
        {
          key: `${key}/repeatability`,
          what: { code: 'repeats-at-a-point' },
          evaluation: { code: 'repeats-pooled', ...repeats },
        },
        repeats,
      ),
      contribution: repeats.standardDeviation * scatterShare,
    });
  } else {
    const rootMeanSquare = Math.sqrt(points.reduce((sum, it) => sum + (it.value * it.share) ** 2 / it.count, 0));
    budget.push(...repeatabilityComponents(instrument, key, rootMeanSquare));
  }
  return {
    budget,
    unassessed: [...missingOfLight(instrument, bands), ...(repeats ? [] : missingRepeatability(instrument))],
  };
}

import { mean, sampleStandardDeviation } from 'simple-statistics';
import type { BudgetComponent, Figure, FigureOrGap, Unassessed } from '../figure.ts';
import { gap } from '../figure.ts';
import { obliqueError } from '../instrument/angular-response.ts';
import {
  angularComponents,
  calibrationComponents,
  type Instrument,
  instrumentAbsence,
  isCalibrated,
  missingAngular,
  missingRepeatability,
  repeatabilityComponents,
  resolutionComponents,
} from '../instrument/instrument.ts';
import {
  type BandShares,
  missingSpectral,
  SHARES_UNKNOWN,
  spectralComponents,
} from '../instrument/spectral-response.ts';
import { methodReference } from '../method-versions.ts';
import type { MetricId } from '../metrics.ts';
import { number } from '../numbers.ts';
import { makeFigure } from '../uncertainty.ts';
import { type DistanceSetting, distanceComponents, litField } from './distance-setting.ts';
import { type UniformityFigures, uniformityFigures, uniformityGaps } from './uniformity.ts';

/** A grid as it was read: rows from the top, points from the left, each with the readings that were kept. */
export interface GridReadings {
  /** Kept readings of each point, mW/cm2; empty where all of them were struck out. */
  points: readonly (readonly (readonly number[])[])[];
  /** Where it was read, for ids: `<panel>/<date>`. */
  session: string;
  instrument: Instrument | undefined;
  distance: DistanceSetting;
  /** How much of the light lies in each band; all of it in either where it is left out. */
  bands?: BandShares;
}

/** Where the points lie on the LED field, and the part of the field that each stands for. */
export interface GridGeometry {
  /** cm from the left edge of the field, one a column. */
  x: number[];
  /** cm from the top edge of the field, one a row. */
  y: number[];
  /** Share of the field nearer to the point than to any other, row by row; sums to 1. */
  shares: number[][];
}

/**
 * Positions of an n x m grid whose outer points lie `inset` inside the edges, and the cells around them: cells
 * meet half-way between neighbours, and outer ones reach to the edge. A single row or column lies in the middle.
 *
 * @param width of the LED field, cm
 * @param height of the LED field, cm
 * @param inset cm
 * @returns undefined where the field is too small for the inset, so that points would coincide or cross
 */
export function gridGeometry(
  columns: number,
  rows: number,
  width: number,
  height: number,
  inset: number,
): GridGeometry | undefined {
  const along = (count: number, size: number): { at: number[]; share: number[] } | undefined => {
    if (count === 1) return { at: [size / 2], share: [1] };
    if (2 * inset >= size) return undefined;
    const at = Array.from({ length: count }, (_, i) => inset + ((size - 2 * inset) * i) / (count - 1));
    const edges = [0, ...at.slice(1).map((it, i) => (it + (at[i] as number)) / 2), size];
    return { at, share: at.map((_, i) => ((edges[i + 1] as number) - (edges[i] as number)) / size) };
  };
  const across = along(columns, width);
  const down = along(rows, height);
  if (!across || !down) return undefined;
  return { x: across.at, y: down.at, shares: down.share.map((dy) => across.share.map((dx) => dx * dy)) };
}

/** Pooled standard deviation of repeats at the same point, and its degrees of freedom. */
export interface Repeats {
  standardDeviation: number;
  degreesOfFreedom: number;
}

/**
 * Scatter of repeated readings at one point, pooled over the points that have any: the root of
 * sum (n_j - 1) s_j^2 / sum (n_j - 1). Spread between points does not enter.
 *
 * Source: pooled estimate, JCGM 100:2008, H.3.6 and 4.2.4 (clause numbers from memory).
 */
export function pooledRepeats(points: readonly (readonly number[])[]): Repeats | undefined {
  let squares = 0;
  let degreesOfFreedom = 0;
  for (const readings of points) {
    if (readings.length < 2) continue;
    squares += (readings.length - 1) * sampleStandardDeviation([...readings]) ** 2;
    degreesOfFreedom += readings.length - 1;
  }
  if (degreesOfFreedom === 0) return undefined;
  return { standardDeviation: Math.sqrt(squares / degreesOfFreedom), degreesOfFreedom };
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
export function gridGaps(reason: string): GridFigures {
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
 * @param geometry for the cells; a string says why there is none
 */
export function gridFigures(grid: GridReadings, geometry: GridGeometry | string): GridFigures {
  const flat = grid.points.flat();
  const oblique = obliqueErrors(grid, geometry);
  const accepted = flat
    .map((readings, index) => ({ readings, index, oblique: oblique[index] ?? 0 }))
    .filter((it) => it.readings.length > 0);
  if (accepted.length === 0) return gridGaps('every reading of the grid was struck out');

  const values = accepted.map((it) => mean([...it.readings]));
  const dropped = flat.length - accepted.length;
  const notes = dropped > 0 ? [`${dropped} of ${flat.length} grid points without a kept reading`] : [];
  const path = `${grid.session}/grid`;
  const repeats = pooledRepeats(flat);
  const geometricShares = typeof geometry === 'string' ? undefined : geometry.shares.flat();

  const weighted = (metric: MetricId, weights: readonly number[], calculation: string): Figure => {
    const total = weights.reduce((sum, w) => sum + w, 0);
    const shares = weights.map((w) => w / total);
    const value = values.reduce((sum, v, i) => sum + v * (shares[i] as number), 0);
    return makeFigure(
      {
        id: `${grid.session}/${metric}`,
        metric,
        unit: 'mW/cm²',
        basis: 'derived',
        method: methodReference('mean-irradiance'),
        inputs: [path],
        calculation: `${calculation} = ${number(value)} mW/cm²`,
        notes,
      },
      value,
      gridKnowledge(grid, accepted, values, shares, repeats, value),
    );
  };

  const equal = weighted(
    METRICS.mean,
    accepted.map(() => 1),
    `Ē = (${values.map((it) => number(it)).join(' + ')}) ÷ ${accepted.length}`,
  );

  const cellMean: FigureOrGap =
    typeof geometry === 'string' || geometricShares === undefined
      ? gap(METRICS.cellMean, geometry as string)
      : weighted(
          METRICS.cellMean,
          accepted.map((it) => geometricShares[it.index] as number),
          `Ē = Σ (cell share × reading), shares ${[...new Set(geometricShares.map((it) => number(it, 3)))].join(', ')}`,
        );

  return {
    mean: equal,
    cellMean,
    ...uniformityFigures({
      session: grid.session,
      instrument: grid.instrument,
      values,
      counts: accepted.map((it) => it.readings.length),
      places: accepted.map((it) => it.index),
      repeats,
      mean: equal,
      oblique: accepted.map((it) => it.oblique),
      common: (value, obliqueError) => commonComponents(grid, value, obliqueError),
    }),
  };
}

/** Errors that all readings of a grid share, as they show at a value; that of oblique light as it was found, mW/cm2. */
function commonComponents(
  { instrument, distance, session, bands = SHARES_UNKNOWN }: GridReadings,
  value: number,
  oblique: number,
): BudgetComponent[] {
  if (!instrument) return [];
  return [
    ...calibrationComponents(instrument, value),
    ...spectralComponents(instrument, value, bands),
    ...distanceComponents(distance, session, value),
    ...angularComponents(instrument, session, oblique),
  ];
}

/** Relative error of the meter at each point from the angles at which the field's light reaches it, row by row. */
function obliqueErrors({ instrument, points, distance }: GridReadings, geometry: GridGeometry | string): number[] {
  const response = instrument?.angularResponse;
  if (!response) return [];
  const field = litField(distance);
  return points.flatMap((row, j) =>
    row.map((_, i) => {
      const spot =
        typeof geometry === 'string' ? undefined : { x: geometry.x[i] as number, y: geometry.y[j] as number };
      return obliqueError(response, field, spot);
    }),
  );
}

function gridKnowledge(
  grid: GridReadings,
  accepted: ReadonlyArray<{ readings: readonly number[]; index: number; oblique: number }>,
  values: readonly number[],
  shares: readonly number[],
  repeats: Repeats | undefined,
  value: number,
): { budget: BudgetComponent[]; unassessed: Unassessed[] } | { absent: string } {
  const { instrument, session, bands = SHARES_UNKNOWN } = grid;
  if (!isCalibrated(instrument)) return { absent: instrumentAbsence(instrument) };
  const oblique = accepted.reduce((sum, it, i) => sum + (shares[i] as number) * (values[i] as number) * it.oblique, 0);
  // Points round and scatter each on their own: root of the sum of squared weights; 1/sqrt n for equal ones.
  const spreadShare = Math.hypot(...shares);
  const key = `${session}/grid`;
  const scatterShare = Math.sqrt(
    accepted.reduce((sum, it, i) => sum + (shares[i] as number) ** 2 / it.readings.length, 0),
  );
  const budget: BudgetComponent[] = [
    ...commonComponents(grid, value, oblique),
    ...resolutionComponents(instrument, key, spreadShare),
  ];
  if (repeats) {
    budget.push({
      source: {
        key: `${key}/repeatability`,
        what: 'Repeats at a point',
        type: 'A',
        distribution: 't',
        degreesOfFreedom: repeats.degreesOfFreedom,
        evaluation: `s = ${number(repeats.standardDeviation, 3)} mW/cm² pooled over repeats at a point, ${repeats.degreesOfFreedom} degrees of freedom`,
      },
      contribution: repeats.standardDeviation * scatterShare,
    });
  } else {
    const rootMeanSquare = Math.sqrt(
      values.reduce((sum, v, i) => sum + (v * (shares[i] as number)) ** 2 / (accepted[i]?.readings.length ?? 1), 0),
    );
    budget.push(...repeatabilityComponents(instrument, key, rootMeanSquare));
  }
  return {
    budget,
    unassessed: [
      ...missingSpectral(instrument, bands),
      ...missingAngular(instrument),
      ...(repeats ? [] : missingRepeatability(instrument)),
    ],
  };
}

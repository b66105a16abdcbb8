import { linearRegression, mean, sum } from 'simple-statistics';
import { student975 } from '../student-t.ts';

/** A straight line through points, by least squares. */
export interface FittedLine {
  slope: number;
  /** Value at x = 0. */
  intercept: number;
  /** Standard uncertainty of the slope: its type A evaluation. */
  slopeUncertainty: number;
  /** Standard deviation of the points about the line. */
  residualDeviation: number;
  degreesOfFreedom: number;
  /** Correlation of each residual with the one before it; 0 where there is no residual. */
  autocorrelation: number;
}

/**
 * Least squares of y on x, with x taken as known. Checked against the certified values of NIST's dataset Norris.
 *
 * @throws RangeError for fewer than three points, or points at one x
 */
export function fittedLine(points: ReadonlyArray<readonly [x: number, y: number]>): FittedLine {
  if (points.length < 3) throw new RangeError(`a line through ${points.length} points`);
  // About the middle, or large numbers would take one another's digits away.
  const [meanX, meanY] = [mean(points.map(([x]) => x)), mean(points.map(([, y]) => y))];
  const centred = points.map(([x, y]) => [x - meanX, y - meanY]);
  const spread = sum(centred.map(([x = 0]) => x * x));
  if (spread === 0) throw new RangeError('all points at one x');
  const { m: slope } = linearRegression(centred);
  const residuals = centred.map(([x = 0, y = 0]) => y - slope * x);
  const squares = sum(residuals.map((it) => it * it));
  const degreesOfFreedom = points.length - 2;
  const residualDeviation = Math.sqrt(squares / degreesOfFreedom);
  return {
    slope,
    intercept: meanY - slope * meanX,
    slopeUncertainty: residualDeviation / Math.sqrt(spread),
    residualDeviation,
    degreesOfFreedom,
    autocorrelation: squares === 0 ? 0 : sum(residuals.slice(1).map((it, i) => it * (residuals[i] ?? 0))) / squares,
  };
}

/** Fewer readings, or readings over fewer days, say nothing of a year: our own choice. */
export const FEWEST_FOR_DRIFT = 6;
export const SHORTEST_FOR_DRIFT = 90;

const DAYS_A_YEAR = 365.25;

/** How a standard's readings go up or down with time, in their unit a year. */
export interface Drift {
  perYear: number;
  /** Half of the 95 % interval, by Student's t. */
  half: number;
  degreesOfFreedom: number;
  /** The interval leaves out nought: up or down is told. */
  isTold: boolean;
  /**
   * Readings stand by those before them more than chance would have it (2/√n, from memory): the interval is then too
   * narrow.
   */
  isCorrelated: boolean;
}

/**
 * Drift by a straight line through all readings.
 *
 * @param readings days since some day, and value; oldest first
 * @returns undefined where they are too few or too near one another in time
 */
export function driftOf(readings: ReadonlyArray<readonly [day: number, value: number]>): Drift | undefined {
  const days = (readings.at(-1)?.[0] ?? 0) - (readings[0]?.[0] ?? 0);
  if (readings.length < FEWEST_FOR_DRIFT || days < SHORTEST_FOR_DRIFT) return undefined;
  const line = fittedLine(readings.map(([day, value]) => [day / DAYS_A_YEAR, value]));
  const half = student975(line.degreesOfFreedom) * line.slopeUncertainty;
  return {
    perYear: line.slope,
    half,
    degreesOfFreedom: line.degreesOfFreedom,
    isTold: Math.abs(line.slope) > half,
    isCorrelated: line.autocorrelation > 2 / Math.sqrt(readings.length),
  };
}

/**
 * Days until a drift has gone as far as an uncertainty; undefined where the drift is not told from none, or would take
 * longer than anyone may look ahead by a straight line.
 *
 * @param uncertainty in the readings' unit
 */
export function daysUntilUsedUp({ perYear, isTold }: Drift, uncertainty: number): number | undefined {
  if (!isTold || uncertainty <= 0) return undefined;
  const years = uncertainty / Math.abs(perYear);
  return years > FARTHEST_AHEAD ? undefined : Math.round(years * DAYS_A_YEAR);
}

/** Years: our own choice. */
export const FARTHEST_AHEAD = 10;

import { mean } from 'simple-statistics';

/**
 * Mean of the range of two draws from a normal distribution with standard deviation 1: d2 for n = 2, which tables give
 * as 1.128. It is the mean of |z1 − z2|, where z1 − z2 has the standard deviation √2: √2 · √(2/π).
 */
export const D2 = 2 / Math.sqrt(Math.PI);

/** Standard deviation of that range: d3 for n = 2, 0.853. The mean square of z1 − z2 is 2. */
const D3 = Math.sqrt(2 - D2 ** 2);

/** Upper limit of a moving range over its mean: D4 for n = 2, which tables give as 3.267. */
export const D4 = 1 + (3 * D3) / D2;

/** Control limits lie so many standard deviations from the centre line: Shewhart's habit. */
export const LIMIT_SIGMAS = 3;

/** So many points in a row on one side of the centre line are a run: by chance one in 256, where that line is known. */
export const RUN_LENGTH = 9;

/** Where a chart's points are looked for; all in the unit of the readings. */
export interface ControlLimits {
  /** Mean of the first readings: the centre line. */
  centre: number;
  lower: number;
  upper: number;
  /** Standard deviation from one reading to the next, from the mean moving range. */
  sigma: number;
  /** Mean moving range, and its upper limit. */
  meanRange: number;
  rangeUpper: number;
}

/**
 * Limits of a chart of individual values (X and moving range). The moving range sees what changes from one reading to
 * the next, so that a slow drift in the first readings does not widen the limits by as much as it would a standard deviation.
 *
 * Formula: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2 (read); ISO 7870-2:2023, 6.5 (its contents seen, its
 * text not).
 *
 * @param first readings that set the limits, oldest first
 * @param leastSigma below it the step of the display is all that a scatter shows
 * @throws RangeError for fewer than two
 */
export function individualsLimits(first: readonly number[], leastSigma = 0): ControlLimits {
  if (first.length < 2) throw new RangeError(`limits of ${first.length} readings`);
  const meanRange = mean(movingRanges(first));
  const sigma = Math.max(meanRange / D2, leastSigma);
  const centre = mean([...first]);
  return {
    centre,
    lower: centre - LIMIT_SIGMAS * sigma,
    upper: centre + LIMIT_SIGMAS * sigma,
    sigma,
    meanRange,
    rangeUpper: D4 * sigma * D2,
  };
}

/** Distances from each reading to the next. */
export function movingRanges(values: readonly number[]): number[] {
  return values.slice(1).map((value, i) => Math.abs(value - (values[i] ?? value)));
}

/** Which limit a value lies beyond; undefined within them. A value on a limit is within. */
export function sideBeyond(value: number, { lower, upper }: Pick<ControlLimits, 'lower' | 'upper'>) {
  if (value > upper) return 'above';
  return value < lower ? 'below' : undefined;
}

/** How many values in a row, each with those before it, lie on one side of the centre line; 0 for one that lies on it. */
export function runLengths(values: readonly number[], centre: number): number[] {
  const lengths: number[] = [];
  let side = 0;
  for (const value of values) {
    const own = Math.sign(value - centre);
    lengths.push(own === 0 ? 0 : own === side ? (lengths.at(-1) ?? 0) + 1 : 1);
    side = own;
  }
  return lengths;
}

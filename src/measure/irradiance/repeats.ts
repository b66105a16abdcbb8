import { sampleStandardDeviation } from 'simple-statistics';

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

import jstat from 'jstat';

/**
 * Quantile of Student's t distribution.
 *
 * @param probability cumulative probability, between 0 and 1
 * @param degreesOfFreedom at least 1; Infinity gives the normal quantile
 * @example studentQuantile(0.975, 8) // 2.306
 */
export function studentQuantile(probability: number, degreesOfFreedom: number): number {
  const key = `${probability}/${degreesOfFreedom}`;
  const known = cache.get(key);
  if (known !== undefined) return known;
  const value = Number.isFinite(degreesOfFreedom)
    ? jstat.studentt.inv(probability, degreesOfFreedom)
    : jstat.normal.inv(probability, 0, 1);
  cache.set(key, value);
  return value;
}

// A guide asks for a handful of quantiles thousands of times; the library searches for each anew.
const cache = new Map<string, number>();

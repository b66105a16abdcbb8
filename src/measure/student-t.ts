import jstat from 'jstat';

/**
 * Quantile of Student's t distribution.
 *
 * @param probability cumulative probability, between 0 and 1
 * @param degreesOfFreedom at least 1; Infinity gives the normal quantile
 * @example studentQuantile(0.975, 8) // 2.306
 */
export function studentQuantile(probability: number, degreesOfFreedom: number): number {
  let known = cache.get(probability);
  if (!known) {
    known = new Map();
    cache.set(probability, known);
  }
  const before = known.get(degreesOfFreedom);
  if (before !== undefined) return before;
  const z = jstat.normal.inv(probability, 0, 1);
  const value =
    degreesOfFreedom < MANY
      ? jstat.studentt.inv(probability, degreesOfFreedom)
      : z + (z ** 3 + z) / (4 * degreesOfFreedom);
  known.set(degreesOfFreedom, value);
  return value;
}

/**
 * From here on the library's search loses its way (it answers 0 at 1e20), and the first term of the expansion
 * about the normal quantile z is good to 1e-9: z + (z^3 + z) / 4 nu (Abramowitz and Stegun 26.7.5, from memory).
 */
const MANY = 1e5;

// A guide asks for a handful of quantiles thousands of times; the library searches for each anew.
const cache = new Map<number, Map<number, number>>();

import { NORMAL_975, STUDENT_975 } from './student-t-table.ts';

/**
 * The 0.975 quantile of Student's t distribution: the factor from a standard uncertainty to the half of a 95 % interval.
 *
 * From a table where degrees of freedom are few. Beyond it by the expansion about the normal quantile (Abramowitz and
 * Stegun 26.7.5, from memory), which is good to 1e-9 there.
 *
 * @param degreesOfFreedom a whole number from 1 up, as `effectiveDegreesOfFreedom` gives; Infinity gives the normal
 * quantile
 * @throws RangeError for any other
 * @example student975(8) // 2.306
 */
export function student975(degreesOfFreedom: number): number {
  // Most figures have infinitely many, and a list is slow to say that it has no such place.
  if (degreesOfFreedom === Number.POSITIVE_INFINITY) return NORMAL_975;
  const known = STUDENT_975[degreesOfFreedom - 1];
  if (known !== undefined) return known;
  if (!Number.isInteger(degreesOfFreedom) || degreesOfFreedom < 1)
    throw new RangeError(`no table has ${degreesOfFreedom} degrees of freedom`);
  const n = degreesOfFreedom;
  return n < MANY ? z + (G1 + (G2 + (G3 + G4 / n) / n) / n) / n : z + G1 / n;
}

const z = NORMAL_975;
const G1 = (z ** 3 + z) / 4;
const G2 = (5 * z ** 5 + 16 * z ** 3 + 3 * z) / 96;
const G3 = (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / 384;
const G4 = (79 * z ** 9 + 776 * z ** 7 + 1482 * z ** 5 - 1920 * z ** 3 - 945 * z) / 92160;

/** From here on the first term says all that six decimals show. */
const MANY = 1e5;

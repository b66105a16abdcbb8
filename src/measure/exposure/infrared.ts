/*
 * Infrared limit for the cornea and lens, IEC 62471:2006, 4.3.7. Formula and clause seen only in secondary sources; the
 * band starts at 780 nm, and the sum over it is not weighted.
 */

/** E = 18000 t^-0.75 W/m², t in s. */
const COEFFICIENT = 18_000;
const EXPONENT = -0.75;

/** Longest time that the formula is for, s; beyond it one limit holds for as long as one likes. */
export const LONGEST_TIMED = 1000;

/** Limit for exposures longer than that, W/m². */
export const LONG_EXPOSURE = 100;

/**
 * What the formula gives at its longest time, 101.2 W/m²: not the 100 W/m² that hold from there on. The step is
 * the standard's own.
 */
export const JOIN = COEFFICIENT * LONGEST_TIMED ** EXPONENT;

/**
 * Irradiance limit at the cornea for an exposure, W/m², 780-3000 nm, unweighted (IEC 62471:2006, 4.3.7, from
 * secondary sources). Not for a band that starts elsewhere, and not for the retina.
 *
 * @param seconds time of the exposure; a negative time or NaN is a RangeError
 * @example infraredLimit(100) // 569.2
 */
export function infraredLimit(seconds: number): number {
  if (!(seconds >= 0)) throw new RangeError(`no time of exposure: ${seconds} s`);
  return seconds > LONGEST_TIMED ? LONG_EXPOSURE : COEFFICIENT * seconds ** EXPONENT;
}

/**
 * Time after which the limit is used up, s: the formula solved for t (IEC 62471:2006, 4.3.7, from secondary
 * sources). Infinity up to 100 W/m²; 1000 s in the step between 100 W/m² and what the formula gives at 1000 s.
 *
 * @param irradiance W/m², 780-3000 nm; negative or NaN is a RangeError
 * @example longestExposureTime(1000) // 47.17
 */
export function longestExposureTime(irradiance: number): number {
  if (!(irradiance >= 0)) throw new RangeError(`no irradiance: ${irradiance} W/m²`);
  if (irradiance <= LONG_EXPOSURE) return Number.POSITIVE_INFINITY;
  if (irradiance <= JOIN) return LONGEST_TIMED;
  return (COEFFICIENT / irradiance) ** (-1 / EXPONENT);
}

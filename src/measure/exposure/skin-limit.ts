/*
 * Thermal limit for the skin, 380-3000 nm, IEC 62471:2006, 4.3.8: its formula, for the radiant exposure, seen only in
 * public implementations that cite the clause. Directive 2006/25/EC, Annex I, has the same limit, from memory; that it
 * has one, for the same band, was seen on pages that quote it.
 */

/**
 * The limit is for the radiant exposure, H = E t = 20000 t^0.25 J/m², t in s; so the irradiance is 20000 t^-0.75 W/m².
 * The exponent is the one of H less one: -0.25 would be 3.2 times too high at 10 s, above what blisters skin.
 */
const COEFFICIENT = 20_000;
const EXPONENT_OF_RADIANT_EXPOSURE = 0.25;

/** The limit is for exposures shorter than this, s ("only less than 10 s": seen on a page that quotes it). */
export const SKIN_TIME = 10;

/**
 * Irradiance limit for the skin, W/m², 380-3000 nm: the limit of the radiant exposure divided by the time (IEC
 * 62471:2006, 4.3.8, from secondary sources).
 *
 * @param seconds time of the exposure; a negative time or NaN is a RangeError
 * @returns 'no-limit' from 10 s on: the standard has none there, since pain and heat stress come first, and it is neither
 *   met nor exceeded
 * @example skinLimit(2) // 11892.07
 */
export function skinLimit(seconds: number): number | 'no-limit' {
  if (!(seconds >= 0)) throw new RangeError(`no time of exposure: ${seconds} s`);
  return seconds >= SKIN_TIME ? 'no-limit' : irradianceFor(seconds);
}

/** What the limit comes down to just under 10 s, W/m²: 3557. */
export const SKIN_LIMIT_AT_END = irradianceFor(SKIN_TIME);

function irradianceFor(seconds: number): number {
  return COEFFICIENT * seconds ** (EXPONENT_OF_RADIANT_EXPOSURE - 1);
}

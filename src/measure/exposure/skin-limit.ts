import type { Limit } from './limit.ts';

/** Thermal limit for the skin, 380-3000 nm: clause and formula from memory. */
export const SKIN_LIMIT: Limit = {
  name: 'thermal limit for the skin',
  source: 'IEC 62471',
  year: 2006,
  edition: 'first edition',
  clause: '4.3.8',
  standing: 'memory',
};

/** E = 20000 t^-0.25 W/m², t in s. */
const COEFFICIENT = 20_000;
const EXPONENT = -0.25;

/** The limit is for exposures shorter than this, s ("only less than 10 s": seen on a page that quotes it). */
export const SKIN_TIME = 10;

/** Where the standard has no limit, with the reason: neither met nor exceeded. */
export interface NotApplicable {
  notApplicable: string;
}

/**
 * Irradiance limit for the skin, W/m², 380-3000 nm (IEC 62471:2006, 4.3.8, from memory). From 10 s on the standard
 * has none, since pain and heat stress come first.
 *
 * @param seconds time of the exposure; a negative time or NaN is a RangeError
 * @example skinLimit(1) // 20000
 */
export function skinLimit(seconds: number): number | NotApplicable {
  if (!(seconds >= 0)) throw new RangeError(`no time of exposure: ${seconds} s`);
  if (seconds >= SKIN_TIME) {
    return { notApplicable: `the standard has no skin limit for exposures of ${SKIN_TIME} s and more` };
  }
  return COEFFICIENT * seconds ** EXPONENT;
}

/** What the limit comes down to just under 10 s, W/m²: 11247. */
export const SKIN_LIMIT_AT_END = COEFFICIENT * SKIN_TIME ** EXPONENT;

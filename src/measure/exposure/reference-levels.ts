/*
 * Reference levels for the general public. Of ICNIRP 2010 (Health Physics 99(6):818-836), magnetic and electric fields, a
 * copy of the paper was seen, Table 4. Of ICNIRP 2020 (Health Physics 118(5):483-524), radio, whole body, average of
 * 30 min: seen in a public implementation that copies the table. Power densities start above 30 MHz; a textbook has the
 * same edge in the table for local exposure, which isn't used.
 */

/** Frequencies that the levels of 2010 are used for here, Hz. */
const LOWEST = 25;
const HIGHEST = 1e7;
/**
 * Frequencies that a session may state for a field, Hz. Above 100 kHz the levels for radio of ICNIRP 2020 hold as well
 * and can be lower, so that a share of the level of 2010 alone would be too mild.
 */
export const STATED_FREQUENCIES = { from: LOWEST, to: 1e5 } as const;
/** Where their rows meet, Hz; from the last one on the level is at its lowest. */
const MAGNETIC_SLOPE_FROM = 400;
const ELECTRIC_SLOPE_FROM = 50;
export const SLOPE_TO = 3000;

/** Lowest levels of 2010, from 3 kHz on: what a field of unknown frequency is held against. µT and V/m. */
export const LOWEST_MAGNETIC_LEVEL = 27;
export const LOWEST_ELECTRIC_LEVEL = 83;

/**
 * Reference level of ICNIRP 2010 for magnetic flux density, general public, rms, µT. At 3 kHz, where two rows meet
 * with a small step, the lower value is taken (our own rule).
 *
 * @param frequency Hz, 25 Hz to 10 MHz; else a RangeError
 * @example magneticReferenceLevel(50) // 200
 */
export function magneticReferenceLevel(frequency: number): number {
  demand(frequency, LOWEST, HIGHEST, 'Hz');
  if (frequency <= MAGNETIC_SLOPE_FROM) return 200;
  // 0.08 / f tesla
  return frequency <= SLOPE_TO ? 80_000 / frequency : LOWEST_MAGNETIC_LEVEL;
}

/**
 * Reference level of ICNIRP 2010 for the electric field, general public, rms, V/m. At 3 kHz, where two rows meet
 * with a small step, the lower value is taken (our own rule).
 *
 * @param frequency Hz, 25 Hz to 10 MHz; else a RangeError
 * @example electricReferenceLevel(60) // 4166.67
 */
export function electricReferenceLevel(frequency: number): number {
  demand(frequency, LOWEST, HIGHEST, 'Hz');
  if (frequency <= ELECTRIC_SLOPE_FROM) return 5000;
  // 250 / f kV/m
  return frequency < SLOPE_TO ? 250_000 / frequency : LOWEST_ELECTRIC_LEVEL;
}

/**
 * Lowest of the whole-body levels of ICNIRP 2020 for power density, 30 min, general public, W/m² (from a secondary source):
 * that from 30 MHz to 400 MHz, what a reading of unknown frequency is held against. Up to 30 MHz the levels are field
 * strengths; above 2 GHz the level is five times as high.
 */
export const LOWEST_RADIO_LEVEL = 2;

function demand(frequency: number, from: number, to: number, unit: string): void {
  if (!(frequency >= from && frequency <= to)) {
    throw new RangeError(`no reference level for ${frequency} ${unit}: outside ${from} to ${to} ${unit}`);
  }
}

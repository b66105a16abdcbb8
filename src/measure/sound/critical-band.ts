/** Frequencies that ECMA-418-1 looks for tones at, Hz. */
export const TONES_FROM = 89.1;
export const TONES_TO = 11220;

/**
 * Width of the critical band about a frequency, both in Hz (ECMA-418-1, in transcribed examples: 162.2 Hz at 1 kHz,
 * 117.3 Hz at 500 Hz).
 */
export function criticalBandwidth(frequency: number): number {
  return 25 + 75 * (1 + 1.4 * (frequency / 1000) ** 2) ** 0.69;
}

/**
 * Ends of that band, Hz: as far to both sides up to 500 Hz, in one ratio above (ECMA-418-1, from memory).
 */
export function criticalBand(frequency: number): { from: number; to: number } {
  const wide = criticalBandwidth(frequency);
  const from = frequency <= 500 ? frequency - wide / 2 : -wide / 2 + Math.sqrt(wide ** 2 + 4 * frequency ** 2) / 2;
  return { from, to: from + wide };
}

/** Two tones nearer than this, Hz, are heard as one (ECMA-418-1, from memory). */
export function proximateWithin(frequency: number): number {
  return 21 * 10 ** (1.2 * Math.abs(Math.log10(frequency / 212)) ** 1.8);
}

/**
 * From which tone-to-noise ratio on a tone is prominent, dB (ECMA-418-1, in secondary sources): 8 dB from 1 kHz on, more
 * below.
 *
 * @example prominentFrom(120) // 15.67
 */
export function prominentFrom(frequency: number): number {
  return 8 + (frequency < 1000 ? 8.33 * Math.log10(1000 / frequency) : 0);
}

/**
 * The quietest pure tone that a young ear hears, dB (Terhardt 1979, from memory; within a few dB of ISO 389-7 between
 * 100 Hz and 10 kHz).
 */
export function hearingThreshold(frequency: number): number {
  const f = frequency / 1000;
  return 3.64 * f ** -0.8 - 6.5 * Math.exp(-0.6 * (f - 3.3) ** 2) + 0.001 * f ** 4;
}

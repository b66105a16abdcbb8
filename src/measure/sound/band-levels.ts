import { at } from '../at.ts';
import type { PowerSpectrum } from './power-spectrum.ts';

/** Twelve bands an octave: narrow enough for a tone to stand out, few enough to draw. */
const BANDS_AN_OCTAVE = 12;

/** Level of a band, dB of full scale, and its middle, Hz. */
export interface BandLevel {
  frequency: number;
  level: number;
}

/**
 * Levels in twelfths of an octave, for drawing; narrow bands that a spectrum can't tell apart are left out.
 *
 * @param from lowest and highest middle, Hz
 */
export function bandLevels({ step, powers }: PowerSpectrum, from: number, to: number): BandLevel[] {
  const ratio = 2 ** (1 / BANDS_AN_OCTAVE);
  const bands: BandLevel[] = [];
  for (let frequency = from; frequency <= to; frequency *= ratio) {
    const first = Math.ceil(frequency / Math.sqrt(ratio) / step);
    const last = Math.min(powers.length - 1, Math.ceil((frequency * Math.sqrt(ratio)) / step) - 1);
    if (last < first) continue;
    let sum = 0;
    for (let i = first; i <= last; i += 1) sum += at(powers, i);
    if (sum > 0) bands.push({ frequency, level: 10 * Math.log10(sum) });
  }
  return bands;
}

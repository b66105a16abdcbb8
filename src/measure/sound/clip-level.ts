import { at } from '../at.ts';
import { aWeight } from './a-weighting.ts';
import { powerOfTwo, powerSpectrum, type Samples } from './power-spectrum.ts';

/** Below this frequency, Hz, nothing is heard, and a sound card's offset and drift lie there. */
const LOWEST = 20;
/** Seconds of the stretches of which the highest is told: as a meter set to "fast" weighs time. */
const FAST = 0.125;

/** Levels of a clip, dB of full scale (a mean square of 1 is 0 dB). */
export interface ClipLevel {
  /** A-weighted, over the whole clip (equivalent level). */
  level: number;
  /** The same of the loudest eighth of a second. */
  highest: number;
  /** Standard deviation of the levels of stretches that do not overlap, dB, and how many there are. */
  scatter: number;
  stretches: number;
}

/**
 * A-weighted level of a clip. The weighting is put on the spectrum of each stretch, of about an eighth of a second.
 *
 * @returns undefined where the clip is too short for two stretches, or holds nothing but nought
 */
export function clipLevel(sound: Samples): ClipLevel | undefined {
  const size = powerOfTwo(FAST * Math.SQRT2 * sound.rate);
  const step = sound.rate / size;
  const weights = Float64Array.from({ length: size / 2 + 1 }, (_, i) => (i * step < LOWEST ? 0 : aWeight(i * step)));
  const all: number[] = [];
  powerSpectrum(sound, size, (powers) => {
    let sum = 0;
    for (let i = 0; i < powers.length; i += 1) sum += at(powers, i) * at(weights, i);
    all.push(sum);
  });
  const mean = all.reduce((sum, it) => sum + it, 0) / all.length;
  if (all.length < 3 || !(mean > 0)) return undefined;
  const apart = all.filter((_, i) => i % 2 === 0);
  const apartMean = apart.reduce((sum, it) => sum + it, 0) / apart.length;
  const variance = apart.reduce((sum, it) => sum + (it - apartMean) ** 2, 0) / (apart.length - 1);
  return {
    level: decibels(mean),
    highest: decibels(Math.max(...all)),
    scatter: (10 / Math.LN10) * (Math.sqrt(variance) / apartMean),
    stretches: apart.length,
  };
}

/** Of a mean square. */
export function decibels(meanSquare: number): number {
  return 10 * Math.log10(meanSquare);
}

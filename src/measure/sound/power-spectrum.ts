import FFT from 'fft.js';
import { at } from '../at.ts';

/** Sound as numbers from -1 to 1 of full scale, so many a second. */
export interface Samples {
  rate: number;
  samples: Float32Array;
}

/** Mean square of each narrow band, of full scale. */
export interface PowerSpectrum {
  /** Hz between middles of bands; band i is about i times that. */
  step: number;
  /** Mean square that each band adds to the whole; the sum is the mean square of the sound. */
  powers: Float64Array;
  /** Stretches that were averaged. */
  averages: number;
}

const hann = (i: number, length: number) => 0.5 - 0.5 * Math.cos((2 * Math.PI * i) / length);

/**
 * Mean squares of narrow bands, from windowed stretches (Hann) that overlap by half (Welch 1967). `each` gets every
 * stretch's bands, in the order of time; they are written over by the next.
 *
 * @param size samples of a stretch, a power of two
 * @returns undefined where the sound is shorter than one stretch
 */
export function powerSpectrum(
  { rate, samples }: Samples,
  size: number,
  each?: (powers: Float64Array) => void,
): PowerSpectrum | undefined {
  const averages = Math.floor((samples.length - size) / (size / 2)) + 1;
  if (averages < 1) return undefined;
  const fft = new FFT(size);
  const input = new Float64Array(size);
  const out = fft.createComplexArray();
  const window = Float64Array.from({ length: size }, (_, i) => hann(i, size));
  const squares = window.reduce((sum, it) => sum + it * it, 0);
  const bands = size / 2 + 1;
  const here = new Float64Array(bands);
  const powers = new Float64Array(bands);
  for (let start = 0; start + size <= samples.length; start += size / 2) {
    for (let i = 0; i < size; i += 1) input[i] = at(samples, start + i) * at(window, i);
    fft.realTransform(out, input);
    for (let i = 0; i < bands; i += 1) {
      // Both halves of the spectrum; nought and the highest have no other half.
      const halves = i === 0 || i === size / 2 ? 1 : 2;
      here[i] = (halves * (at(out, 2 * i) ** 2 + at(out, 2 * i + 1) ** 2)) / (size * squares);
      powers[i] = at(powers, i) + at(here, i) / averages;
    }
    each?.(here);
  }
  return { step: rate / size, powers, averages };
}

/** The largest power of two that is at most so many. */
export function powerOfTwo(most: number): number {
  return 2 ** Math.floor(Math.log2(most));
}

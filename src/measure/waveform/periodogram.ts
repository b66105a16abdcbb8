import FFT from 'fft.js';
import { at } from '../log/series.ts';

/** Samples that a spectrum is made of, at most; of a longer record the first. Two seconds at half a million a second. */
export const MOST_SAMPLES = 2 ** 20;

/** Power of a record at the frequencies of its transform. */
export interface Periodogram {
  /** Square of the amplitude that a sine would have, at `k · spacing`. */
  power: Float64Array;
  /** Hz between neighbours; a record's own resolution is coarser, `1 / duration`. */
  spacing: number;
  /** Neighbours that one line of the record spreads over, either way: half the main lobe of the window. */
  lobe: number;
}

/**
 * Power of an evenly sampled record, its mean taken off, under a Hann window (F. J. Harris 1978; from memory: main lobe of four
 * resolutions, side lobes that fall by 18 dB an octave). Filled up with zeros to the next power of two.
 *
 * @param rate samples a second
 */
export function periodogram(record: Float64Array, rate: number): Periodogram {
  const values = record.length > MOST_SAMPLES ? record.subarray(0, MOST_SAMPLES) : record;
  const size = 2 ** Math.max(2, Math.ceil(Math.log2(values.length)));
  const window = (i: number) => 0.5 - 0.5 * Math.cos((2 * Math.PI * i) / values.length);
  let [sum, weights] = [0, 0];
  for (let i = 0; i < values.length; i++) {
    sum += at(values, i) * window(i);
    weights += window(i);
  }
  const mean = sum / weights;
  // Plain numbers take a quarter of what lists of anything take while they fill; the library asks for no more.
  const input = new Float64Array(size);
  for (let i = 0; i < values.length; i++) input[i] = (at(values, i) - mean) * window(i);
  const fft = new FFT(size);
  const out = new Float64Array(2 * size);
  fft.realTransform(out, input);
  const power = new Float64Array(size / 2);
  for (let k = 0; k < power.length; k++) {
    power[k] = (4 * (at(out, 2 * k) ** 2 + at(out, 2 * k + 1) ** 2)) / weights ** 2;
  }
  return { power, spacing: rate / size, lobe: (2 * size) / values.length };
}

import { median } from 'simple-statistics';

/** A quantity against time, as a meter logged it. */
export interface TimeSeries {
  /** s, rising; steps may be uneven. */
  times: Float64Array;
  /** In one unit, one for each time. */
  values: Float64Array;
}

/** A stretch of time and what was read in it. */
export interface Bin {
  /** Mean time of its samples, s. */
  time: number;
  mean: number;
  samples: number;
}

/** Samples that a robust estimate looks at, at most: more tell nothing new. */
const ENOUGH = 20_000;

/** Of a normal distribution: its standard deviation over its median absolute deviation. */
const SIGMA_OF_MAD = 1.482602218505602;

/**
 * Scatter of single samples (one standard deviation), from the second differences of neighbours, which a steady slope
 * does not reach. By their median, so that jumps and spikes are not taken for scatter. Zero where more than half of all
 * neighbours are alike, as with a coarse display.
 *
 * The variance of y1 - 2 y2 + y3 is six times that of y where samples scatter independently. Samples that a meter has
 * smoothed scatter by more than this says.
 */
export function sampleScatter({ values }: Pick<TimeSeries, 'values'>): number {
  const count = values.length - 2;
  if (count < 1) return 0;
  const stride = Math.max(1, Math.floor(count / ENOUGH));
  const differences: number[] = [];
  for (let i = 0; i < count; i += stride) {
    differences.push(Math.abs(at(values, i) - 2 * at(values, i + 1) + at(values, i + 2)));
  }
  return (SIGMA_OF_MAD * median(differences)) / Math.sqrt(6);
}

/**
 * Means over stretches of one length, from the first time on; stretches without a sample are left out.
 *
 * @param length s, above zero
 */
export function binned({ times, values }: TimeSeries, length: number): Bin[] {
  const bins: Bin[] = [];
  const start = at(times, 0);
  let current = -1;
  let bin: { time: number; sum: number; samples: number } | undefined;
  const close = () => {
    if (bin) bins.push({ time: bin.time / bin.samples, mean: bin.sum / bin.samples, samples: bin.samples });
  };
  for (let i = 0; i < times.length; i++) {
    // A hair is added, so that a sample at a border goes to the later stretch however its time was rounded.
    const which = Math.floor((at(times, i) - start) / length + 1e-9);
    if (!bin || which !== current) {
      close();
      bin = { time: 0, sum: 0, samples: 0 };
      current = which;
    }
    bin.time += at(times, i);
    bin.sum += at(values, i);
    bin.samples++;
  }
  close();
  return bins;
}

/** From the first sample to the last, s. */
export function span({ times }: Pick<TimeSeries, 'times'>): number {
  return times.length === 0 ? 0 : at(times, times.length - 1) - at(times, 0);
}

/** An element that is known to be there. */
export function at(list: ArrayLike<number>, index: number): number {
  return list[index] as number;
}

import { at, type TimeSeries } from '../log/series.ts';

/** One period of a wave, averaged over all periods of a record. */
export interface Fold {
  /** Mean of each part of the period that samples fell into. */
  profile: number[];
  /** Standard uncertainty of each of these means. */
  scatter: number[];
}

/** Numbers of parts that a period may be divided into, each about half of the one before. */
export const PARTS = [200, 100, 50, 26, 14] as const;
/** Samples in each part, on average, at least. Our own choice. */
export const FEWEST_EACH = 8;

/** Lays all periods of a record over one another. */
export function fold({ times, values }: TimeSeries, frequency: number, parts: number): Fold {
  const sums = new Float64Array(parts);
  const squares = new Float64Array(parts);
  const counts = new Uint32Array(parts);
  const start = at(times, 0);
  const middle = at(values, 0);
  for (let i = 0; i < values.length; i++) {
    const turns = (at(times, i) - start) * frequency;
    // A hair is added, so that samples at the same phase stay together however their times were rounded.
    const part = Math.floor((turns - Math.floor(turns)) * parts + 1e-6) % parts;
    const value = at(values, i) - middle;
    sums[part] = at(sums, part) + value;
    squares[part] = at(squares, part) + value * value;
    counts[part] = at(counts, part) + 1;
  }
  const filled = [...counts.keys()].filter((it) => at(counts, it) > 0);
  const variances = filled
    .filter((it) => at(counts, it) > 1)
    .map((it) => {
      const n = at(counts, it);
      return Math.max(0, at(squares, it) - at(sums, it) ** 2 / n) / (n - 1);
    })
    .sort((a, b) => a - b);
  // The median: edges that run through a part of the period are no scatter.
  const variance = variances[variances.length >> 1] ?? 0;
  return {
    profile: filled.map((it) => middle + at(sums, it) / at(counts, it)),
    scatter: filled.map((it) => Math.sqrt(variance / at(counts, it))),
  };
}

/**
 * A frequency set right by how far its phase has moved between the first half of a record and the second. Twice, since the first step is of a wrong frequency.
 *
 * @param frequency right to a fifth of the record's resolution or better, Hz
 */
export function tuned(series: TimeSeries, frequency: number): number {
  let tuned = frequency;
  for (let i = 0; i < 2; i++) {
    const half = series.values.length >> 1;
    const [first, second] = [phasor(series, tuned, 0, half), phasor(series, tuned, half, 2 * half)];
    let turn = second.phase - first.phase;
    turn -= 2 * Math.PI * Math.round(turn / (2 * Math.PI));
    const apart = at(series.times, half) - at(series.times, 0);
    tuned -= turn / (2 * Math.PI * apart);
  }
  return tuned;
}

/** Amplitude and phase of the sine at a frequency in a part of a record, under a Hann window. */
export function phasor({ times, values }: TimeSeries, frequency: number, from: number, to: number) {
  const start = at(times, 0);
  let [real, imaginary, weights, sum, cosines, sines] = [0, 0, 0, 0, 0, 0];
  for (let i = from; i < to; i++) {
    const weight = 0.5 - 0.5 * Math.cos((2 * Math.PI * (i - from)) / (to - from));
    const turn = 2 * Math.PI * frequency * (at(times, i) - start);
    const [cosine, sine] = [weight * Math.cos(turn), weight * Math.sin(turn)];
    real += at(values, i) * cosine;
    imaginary += at(values, i) * sine;
    cosines += cosine;
    sines += sine;
    weights += weight;
    sum += at(values, i) * weight;
  }
  const mean = sum / weights;
  real -= mean * cosines;
  imaginary -= mean * sines;
  return { amplitude: (2 * Math.hypot(real, imaginary)) / weights, phase: Math.atan2(imaginary, real) };
}

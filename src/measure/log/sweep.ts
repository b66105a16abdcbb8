import { type Hover, hovers } from './hovers.ts';
import { at, sampleScatter, type TimeSeries } from './series.ts';

/** A sample that stands out from its neighbours on both sides, as a slip or a disturbance does. */
export interface Spike {
  /** s */
  time: number;
  value: number;
  /** The higher of its neighbours. */
  beside: number;
}

/** What a sweep of the sensor over the face says. */
export interface Sweep {
  samples: number;
  /** s */
  length: number;
  /** Median time from sample to sample, s. */
  step: number;
  /** Scatter of single samples, one standard deviation. */
  scatter: number;
  /** The highest sample of all, as a meter's max hold would show it. */
  maximum: number;
  /** The highest that is no spike, and when. */
  steadyMaximum: { time: number; value: number };
  /** Value that 99 % of the time was under. */
  percentile99: number;
  spikes: readonly Spike[];
  hovers: readonly Hover[];
}

/** Scatters by which a sample has to stand out to be a spike. Our own choice. */
export const SPIKE_SCATTERS = 6;
/** And share of its neighbours. Our own choice: a display's last digits reach less. */
export const SPIKE_SHARE = 0.05;

/**
 * Maximum, percentile, spikes and hovers of a series of readings. Spikes count in the maximum and in the percentile; the maximum
 * without them stands beside. Three samples are there at least.
 */
export function sweep(series: TimeSeries): Sweep {
  const { times, values } = series;
  const count = values.length;
  const scatter = sampleScatter(series);
  const spikes = findSpikes(series, scatter);
  const isSpike = new Set(spikes.map((it) => it.index));
  let maximum = Number.NEGATIVE_INFINITY;
  let steady = { time: at(times, 0), value: Number.NEGATIVE_INFINITY };
  for (let i = 0; i < count; i++) {
    const value = at(values, i);
    if (value > maximum) maximum = value;
    if (value > steady.value && !isSpike.has(i)) steady = { time: at(times, i), value };
  }
  return {
    samples: count,
    length: at(times, count - 1) - at(times, 0),
    step: medianStep(times),
    scatter,
    maximum,
    steadyMaximum: steady,
    percentile99: timePercentile(series, 0.99),
    spikes: spikes.map(({ index: _, ...it }) => it),
    hovers: hovers(series, scatter),
  };
}

/**
 * A spike lies above both neighbours, and above where the two samples on either side lead to (the cubic through them), by more
 * than scatter and a twentieth. So the top of a hill that the sensor passed quickly is none. First and last two can't be told.
 */
function findSpikes({ times, values }: TimeSeries, scatter: number): Array<Spike & { index: number }> {
  const found: Array<Spike & { index: number }> = [];
  for (let i = 2; i < values.length - 2; i++) {
    const value = at(values, i);
    const [before, after] = [at(values, i - 1), at(values, i + 1)];
    const beside = Math.max(before, after);
    if (value <= beside) continue;
    const expected = (4 * (before + after) - at(values, i - 2) - at(values, i + 2)) / 6;
    const least = Math.max(SPIKE_SCATTERS * scatter, SPIKE_SHARE * Math.abs(beside));
    if (value - expected > least && value - beside > least / 2) {
      found.push({ index: i, time: at(times, i), value, beside });
    }
  }
  return found;
}

/** Value that the series was under for a share of its time; each sample stands for half the way to its neighbours. */
export function timePercentile(series: TimeSeries, share: number): number {
  const { times, values } = thinned(series);
  const count = values.length;
  if (isEven(series.times)) {
    // Alike for all: by rank alone, which sorts a long log a hundred times faster.
    values.sort();
    return at(values, Math.min(count - 1, Math.ceil(share * count) - 1));
  }
  const order = new Uint32Array(count).map((_, i) => i).sort((a, b) => at(values, a) - at(values, b));
  const durationOf = (i: number) => (at(times, Math.min(i + 1, count - 1)) - at(times, Math.max(i - 1, 0))) / 2;
  const wanted = share * (at(times, count - 1) - at(times, 0));
  let passed = 0;
  for (const i of order) {
    passed += durationOf(i);
    if (passed >= wanted) return at(values, i);
  }
  return at(values, at(order, count - 1));
}

/** Samples that ranks are told by, at most: more tell nothing new, and a log has millions. */
const ENOUGH = 500_000;

/** Every sample of a short log, and every so many of a long one; in arrays of their own. */
function thinned({ times, values }: TimeSeries): TimeSeries {
  const each = Math.max(1, Math.ceil(values.length / ENOUGH));
  const few = (all: Float64Array) => new Float64Array(Math.ceil(all.length / each)).map((_, i) => at(all, i * each));
  return { times: few(times), values: few(values) };
}

/** No step is half as long again as the mean of all. */
function isEven(times: Float64Array): boolean {
  const step = (at(times, times.length - 1) - at(times, 0)) / Math.max(1, times.length - 1);
  for (let i = 1; i < times.length; i++) if (at(times, i) - at(times, i - 1) > 1.5 * step) return false;
  return true;
}

/** Median time between neighbours, s. */
export function medianStep(times: Float64Array): number {
  if (times.length < 2) return 0;
  const each = Math.ceil(times.length / ENOUGH);
  const steps = new Float64Array(Math.ceil((times.length - 1) / each));
  for (let i = 0; i < steps.length; i++) steps[i] = at(times, i * each + 1) - at(times, i * each);
  steps.sort();
  return at(steps, steps.length >> 1);
}

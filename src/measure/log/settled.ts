import { at, type Bin } from './series.ts';
import { SETTLED_SPREAD, SETTLED_WINDOW } from './settled-criterion.ts';

/**
 * How far n values that only scatter lie apart, in standard deviations: mean of the range of a normal sample of 15, such as
 * a window of minutes has (W. A. Shewhart's d2; from memory, and recomputed by simulation).
 */
export const RANGE_OF_WINDOW = 3.47;

/** Two deviations of that range; by simulation. */
const RANGE_VARIES = 1.5;

/** When a log had settled. */
export interface Settling {
  /** The last window: its spread in % of its last value, its mean. */
  spread: number;
  mean: number;
  /** Values that the mean is of. */
  bins: number;
  isSettled: boolean;
  /**
   * Where it is settled: the start of the first window from which on every window meets the criterion, s; and between
   * which times it may have been, where scatter widens or narrows the spread.
   */
  since?: { time: number; from: number; to: number };
}

/**
 * Holds a log against the criterion, backwards from its end. A log tells more than a reader at the bench knows at the time: it had
 * settled when the first window began from which on the spread stays under the limit, and so a fan that starts late moves it.
 *
 * @param bins means over stretches of one length, a window at least
 * @param scatter standard deviation of these means, in their unit
 */
export function settling(bins: readonly Bin[], scatter: number): Settling {
  const last = windowAt(bins, bins.length - 1);
  const isSettled = last.spread < SETTLED_SPREAD;
  const result: Settling = { spread: last.spread, mean: last.mean, bins: last.bins, isSettled };
  if (!isSettled) return result;
  const relative = (100 * scatter) / Math.abs(last.mean);
  // Scatter makes a spread larger by as much as its own range, and smaller by two deviations of that at most.
  const limits = [
    SETTLED_SPREAD,
    SETTLED_SPREAD + RANGE_OF_WINDOW * relative,
    SETTLED_SPREAD - RANGE_VARIES * relative,
  ];
  const times = limits.map((limit) => firstFrom(bins, limit)) as [number, number, number];
  return { ...result, since: { time: times[0], from: Math.min(times[0], times[1]), to: Math.max(times[0], times[2]) } };
}

/** Start of the first window from which on every one has less than a spread. */
function firstFrom(bins: readonly Bin[], limit: number): number {
  let since = windowAt(bins, bins.length - 1).start;
  for (let end = bins.length - 1; end >= 0; end--) {
    const window = windowAt(bins, end);
    if (!(window.spread < limit) || !window.isWhole) break;
    since = window.start;
  }
  return since;
}

/** The window that ends with a bin. */
function windowAt(bins: readonly Bin[], end: number) {
  const last = binAt(bins, end);
  const from = last.time - SETTLED_WINDOW;
  let [low, high, sum, count, first] = [last.mean, last.mean, 0, 0, end];
  for (let i = end; i >= 0 && binAt(bins, i).time >= from - 1e-9; i--) {
    const { mean } = binAt(bins, i);
    low = Math.min(low, mean);
    high = Math.max(high, mean);
    sum += mean;
    count++;
    first = i;
  }
  return {
    start: binAt(bins, first).time,
    /** It does not begin before the log. */
    isWhole: binAt(bins, 0).time <= from + stretch(bins),
    spread: (100 * (high - low)) / Math.abs(last.mean),
    mean: sum / count,
    bins: count,
  };
}

const stretch = (bins: readonly Bin[]) => (bins.length < 2 ? 0 : binAt(bins, 1).time - binAt(bins, 0).time);

const binAt = (bins: readonly Bin[], i: number) => bins[i] as Bin;

/** Mean of what was read around a time; undefined where nothing was. */
export function valueAround(bins: readonly Bin[], time: number): number | undefined {
  if (bins.length === 0) return undefined;
  const times = bins.map((it) => it.time);
  const after = times.findIndex((it) => it >= time);
  if (after === -1) return undefined;
  if (after === 0) return binAt(bins, 0).mean;
  const share = (time - at(times, after - 1)) / (at(times, after) - at(times, after - 1));
  return binAt(bins, after - 1).mean * (1 - share) + binAt(bins, after).mean * share;
}

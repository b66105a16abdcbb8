import type { TimeSeries } from '../../measure/log/series.ts';

/** A log as it is drawn: highest and lowest reading of each stretch, so that no spike is lost. */
export interface DrawnSeries {
  /** Time at which each stretch begins, s; the last time at the end. */
  times: number[];
  low: number[];
  high: number[];
}

/** Reduces a log to at most so many stretches; a short one stays as it is, each reading a stretch of its own. */
export function drawnSeries({ times, values }: TimeSeries, most: number): DrawnSeries {
  const each = Math.max(1, Math.ceil(times.length / most));
  const drawn: DrawnSeries = { times: [], low: [], high: [] };
  for (let from = 0; from < times.length; from += each) {
    const part = values.subarray(from, from + each);
    let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (const it of part) {
      low = Math.min(low, it);
      high = Math.max(high, it);
    }
    drawn.times.push(times[from] as number);
    drawn.low.push(low);
    drawn.high.push(high);
  }
  return drawn;
}

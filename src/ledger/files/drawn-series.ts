/** Readings over time, or over wavelength or frequency. */
interface Readings {
  times: ArrayLike<number>;
  values: ArrayLike<number>;
}

/** A log as it is drawn: highest and lowest reading of each stretch, so that no spike is lost. */
export interface DrawnSeries {
  /** Time at which each stretch begins, s; the last time at the end. */
  times: number[];
  low: number[];
  high: number[];
}

/** Stretches for who looks closer: every reading of most files, and of a log of a day still what a screen can show of a part. */
export const CLOSE = 4000;

/** Reduces a log to at most so many stretches; a short one stays as it is, each reading a stretch of its own. */
export function drawnSeries({ times, values }: Readings, most: number): DrawnSeries {
  const each = Math.max(1, Math.ceil(times.length / most));
  const drawn: DrawnSeries = { times: [], low: [], high: [] };
  for (let from = 0; from < times.length; from += each) {
    let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (let i = from; i < Math.min(from + each, times.length); i++) {
      low = Math.min(low, values[i] as number);
      high = Math.max(high, values[i] as number);
    }
    drawn.times.push(times[from] as number);
    drawn.low.push(low);
    drawn.high.push(high);
  }
  return drawn;
}

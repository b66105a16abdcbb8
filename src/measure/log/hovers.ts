import { at, type TimeSeries } from './series.ts';

/** A stretch in which the sensor was held still. */
export interface Hover {
  /** s */
  from: number;
  to: number;
  /** Of its later part: slow meters still climb in the first. */
  mean: number;
  /** Standard deviation of the samples that the mean is of. */
  deviation: number;
  /** How many these are. */
  samples: number;
}

/** Shortest hover, s. Our own choice. */
export const SHORTEST_HOVER = 2;
/** Samples in one, at least. */
const FEWEST_SAMPLES = 5;
/** Share of its level that a hover's samples lie from it, at most. Our own choice: the hand that holds the sensor. */
export const HOVER_SHARE = 0.02;
/** And scatters. */
const HOVER_SCATTERS = 4;
/** Samples in a row that have left a hover end it; a single one does not. */
const LEAVING = 2;
/** Part of a hover that its mean is of, from the first of these shares to the second. */
const STEADY_PART = [0.4, 0.95] as const;
/** Samples of a hover that its level is followed by. */
const FOLLOWED = 25;

/** Stretches of at least two seconds in which a series stays at one level, in the order of time. */
export function hovers({ times, values }: TimeSeries, scatter: number, shortest = SHORTEST_HOVER): Hover[] {
  const found: Hover[] = [];
  const room = (level: number) => Math.max(HOVER_SCATTERS * scatter, HOVER_SHARE * Math.abs(level));
  let start = 0;
  while (start < values.length) {
    const end = endOf(values, start, room);
    const isLong = at(times, end) - at(times, start) >= shortest && end - start + 1 >= FEWEST_SAMPLES;
    if (isLong) {
      found.push(hover({ times, values }, start, end));
      start = end + 1;
    } else {
      start++;
    }
  }
  return found;
}

/** The last sample of what begins at one and stays at its level. */
function endOf(values: Float64Array, start: number, room: (level: number) => number): number {
  let level = at(values, start);
  // Where it began: a level that creeps away from there is no hover, however slowly it does.
  let first = level;
  let last = start;
  let away = 0;
  for (let i = start + 1; i < values.length; i++) {
    const value = at(values, i);
    if (i - start === FOLLOWED) first = level;
    if (Math.abs(level - first) > room(first)) break;
    if (Math.abs(value - level) <= room(level)) {
      last = i;
      away = 0;
      // The level follows what it is held against, so that it is not the first sample's scatter.
      level += (value - level) / Math.min(i - start + 1, FOLLOWED);
    } else if (++away >= LEAVING) {
      break;
    }
  }
  return last;
}

function hover({ times, values }: TimeSeries, start: number, end: number): Hover {
  const length = end - start;
  const first = start + Math.floor(STEADY_PART[0] * length);
  const last = Math.max(first, start + Math.floor(STEADY_PART[1] * length));
  // The median first, so that a spike within the hover moves nothing.
  const part = values.slice(first, last + 1).sort();
  const middle = at(part, part.length >> 1);
  const kept = part.filter((it) => Math.abs(it - middle) <= HOVER_SHARE * Math.abs(middle) * 2);
  const mean = kept.reduce((sum, it) => sum + it, 0) / kept.length;
  const square = kept.reduce((sum, it) => sum + (it - mean) ** 2, 0);
  return {
    from: at(times, start),
    to: at(times, end),
    mean,
    deviation: kept.length > 1 ? Math.sqrt(square / (kept.length - 1)) : 0,
    samples: kept.length,
  };
}

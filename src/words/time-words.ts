/** Times in the guide’s one notation: `47.1 s`, `3 min 47 s`, `4 min`, `1 h 5 min`. No statements, no DOM. */
import { number } from '../measure/numbers.ts';
import { decimalsFor, fixed } from './format.ts';

const MINUTE = 60;
const HOUR = 3600;
/** Significant digits of a time that has no interval. */
const DIGITS = 3;
/** What a time longer than a minute is rounded to, s: what a reader counts in. */
const STEPS = [1, 10, MINUTE, 600, HOUR];
/** A step is no more than this part of what an interval leaves open: about two digits of it are kept. Our own choice. */
const STEPS_WITHIN = 3.5;

/** A time with its 95 % interval, s. */
export interface TimeRange {
  value: number;
  low: number;
  high: number;
}

/** A time without an interval, with three digits; from a minute on in whole seconds, down, so that none is longer than it is. */
export function timeWords(seconds: number): string {
  const shown = Number(seconds.toPrecision(DIGITS));
  if (shown < MINUTE) return `${number(shown, DIGITS)} s`;
  return parted(shown - (shown % (shown < HOUR ? 1 : MINUTE)));
}

/** A time and the ends of its interval, with the digits that the interval leaves: `4 min`, `3 min 47 s to 4 min 13 s`. */
export function timeRangeWords({ value, low, high }: TimeRange): { value: string; interval: string } {
  const half = (high - low) / 2;
  const write = half > 0 ? (seconds: number) => rounded(seconds, half) : timeWords;
  return { value: write(value), interval: `${write(low)} to ${write(high)}` };
}

function rounded(seconds: number, half: number): string {
  const decimals = Math.max(0, decimalsFor(half));
  if (Number(seconds.toFixed(decimals)) < MINUTE) return `${fixed(seconds, decimals)} s`;
  const step = STEPS.findLast((it) => it <= Math.min(half / STEPS_WITHIN, seconds)) ?? 1;
  // Nobody counts the seconds beside hours.
  const least = seconds < HOUR ? step : Math.max(MINUTE, step);
  return parted(least * Math.round(seconds / least));
}

/** Whole seconds in hours, minutes and seconds; what is nought is left out. */
function parted(seconds: number): string {
  const parts: Array<[count: number, unit: string]> = [
    [Math.floor(seconds / HOUR), 'h'],
    [Math.floor((seconds % HOUR) / MINUTE), 'min'],
    [Math.round(seconds % MINUTE), 's'],
  ];
  return parts.flatMap(([count, unit]) => (count > 0 ? [`${fixed(count, 0)} ${unit}`] : [])).join(' ') || '0 s';
}

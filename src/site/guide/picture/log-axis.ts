import { range } from 'd3-array';
import { pixels } from '../../shared/browser/plot.ts';
import { roundEnds } from '../browser/round-ends.ts';

/** A round number of an axis: its place, and its words where they have room. */
export interface LogTick {
  at: number;
  text: string | undefined;
}

/** An axis on which equal lengths stand for equal ratios. */
export interface LogAxis {
  low: number;
  high: number;
  /** Where a value lies, to a tenth of a pixel; what lies past an end is put on it. */
  place(value: number): number;
  /** Length of a factor of ten; negative where the axis runs up a page. */
  perDecade: number;
  ticks: LogTick[];
}

/** Round numbers of a decade. */
const FINE = [1, 1.5, 2, 3, 5, 7];
const MIDDLE = [1, 2, 5];
const COARSE = [1];
/** A decade shorter than this has no lines within it, px. */
const SHORT = 40;

/**
 * An axis from the round number below the least value to the one above the greatest, which are 1, 2 or 5 times a power
 * of ten. Powers of ten get their words first, then the others as far as they have room.
 *
 * @param values all above nought, one at least
 * @param ends where the axis begins and ends
 * @param room what words need along the axis
 */
export function logAxis(
  values: readonly number[],
  [from, to]: readonly [number, number],
  words: (value: number) => string,
  room: (text: string) => number,
): LogAxis {
  const { min: low, max: high } = roundEnds(values);
  const perDecade = (to - from) / Math.log10(high / low);
  const exact = (value: number) => from + perDecade * Math.log10(value / low);
  const place = (value: number) => pixels(exact(Math.min(high, Math.max(low, value))));
  const lines = roundNumbers(low, high, Math.abs(perDecade) < SHORT ? COARSE : MIDDLE);
  const told: Array<{ at: number; room: number }> = [];
  const texts = new Map<number, string>();
  for (const step of MIDDLE) {
    for (const value of lines.filter((it) => it.toExponential().startsWith(`${step}e`))) {
      const text = words(value);
      const own = { at: exact(value), room: room(text) };
      if (told.some((it) => Math.abs(it.at - own.at) < (it.room + own.room) / 2)) continue;
      told.push(own);
      texts.set(value, text);
    }
  }
  return { low, high, place, perDecade, ticks: lines.map((it) => ({ at: place(it), text: texts.get(it) })) };
}

/**
 * Round numbers that enclose some values, at most so many: in steps of 1, 1.5, 2, 3, 5 and 7, of 1, 2 and 5, or of powers
 * of ten alone.
 */
export function roundsAround(values: readonly number[], most: number): number[] {
  const choices = [FINE, MIDDLE, COARSE].map((steps) =>
    roundNumbers(roundDown(Math.min(...values), steps), roundUp(Math.max(...values), steps), steps),
  );
  return choices.find((it) => it.length <= most) ?? choices.at(-1) ?? [];
}

/** Products of steps and powers of ten from one value to another, both counted in. */
function roundNumbers(low: number, high: number, steps: readonly number[]): number[] {
  const [first, last] = [Math.floor(Math.log10(low)) - 1, Math.floor(Math.log10(high)) + 1];
  return range(first, last + 1)
    .flatMap((exponent) => steps.map((it) => times(it, exponent)))
    .filter((it) => it >= low && it <= high);
}

const roundDown = (value: number, steps: readonly number[]) => roundNumbers(value / 100, value, steps).at(-1) ?? value;
const roundUp = (value: number, steps: readonly number[]) => roundNumbers(value, value * 100, steps)[0] ?? value;

/** Exact where a power of ten is not: 2e-3 is 0.002. */
const times = (step: number, exponent: number) => Number(`${step}e${exponent}`);

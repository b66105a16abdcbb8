import type { EvenRows } from './even-rows.ts';

/**
 * Straight lines between rows, and a highest row beside the top, widen a Gaussian peak by up to about half a step
 * squared over its width; derived here.
 */
const SAMPLING = 0.5;

/** A peak's width at half its height, nm. */
export interface HalfWidth {
  value: number;
  /** Standard uncertainty from noise and from how far apart the rows are. */
  error: number;
  /** Where the two sides cross half the height. */
  from: number;
  to: number;
  /** nm for each unit of the value that the level is off, both sides together. */
  perLevel: number;
}

/**
 * Full width at half maximum by straight lines between rows (ISO/CIE practice; formula seen in secondary sources).
 * Undefined where a side goes up to a neighbour, or ends, before it has come down to the half.
 *
 * @param at place of the summit among the rows
 * @param between the places of the saddles beside it
 * @param noise standard deviation of a row
 */
export function halfWidthAt(
  rows: EvenRows,
  at: number,
  height: number,
  noise: number,
  between: readonly [number, number] = [0, rows.values.length - 1],
): HalfWidth | undefined {
  const left = crossing(rows, at, height, between[0]);
  const right = crossing(rows, at, height, between[1]);
  if (!left || !right) return undefined;
  const [from, to] = [rows.from + left.place * rows.step, rows.from + right.place * rows.step];
  const perLevel = (1 / left.slope + 1 / right.slope) * rows.step;
  const ofNoise = Math.hypot(noise / left.slope, noise / right.slope) * rows.step;
  const error = Math.hypot(ofNoise, (SAMPLING * rows.step ** 2) / (to - from) / Math.sqrt(3));
  return { value: to - from, error, from, to, perLevel };
}

/**
 * Width of a peak from one side of it alone, nm, where the other goes into a neighbour; undefined where neither comes down.
 */
export function widthFromOneSide(
  rows: EvenRows,
  at: number,
  height: number,
  between: readonly [number, number],
): number | undefined {
  const sides = between.flatMap((end) => {
    const found = crossing(rows, at, height, end);
    return found ? [2 * Math.abs(found.place - at) * rows.step] : [];
  });
  return sides.length === 0 ? undefined : Math.min(...sides);
}

interface Crossing {
  place: number;
  /** Fall from row to row there. */
  slope: number;
}

function crossing({ values }: EvenRows, at: number, height: number, end: number): Crossing | undefined {
  const half = height / 2;
  const step = end < at ? -1 : 1;
  for (let i = at + step; step * (end - i) >= 0; i += step) {
    const [before, here] = [values[i - step] as number, values[i] as number];
    if (here > height) return undefined;
    if (here <= half) {
      const slope = before - here;
      return { place: i - (step * (half - here)) / slope, slope };
    }
  }
  return undefined;
}

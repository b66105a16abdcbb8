/** What plots share, drawn by the build or by a script: axes, lines, labels. Lengths in CSS pixels. No DOM. */
import { nice, ticks } from 'd3-array';
import { fixed } from '../../../words/format.ts';

/** A tick of an axis: its place and its words. */
export interface Tick {
  at: number;
  text: string;
}

/** A linear axis from nought to a round number. */
export interface Axis {
  /** Where a value lies, to a tenth of a pixel. */
  place(value: number): number;
  ticks: Tick[];
}

/** Lengths are rounded to a tenth of a pixel. */
export const pixels = (length: number) => Number(length.toFixed(1));

/**
 * An axis from nought to the highest value, which is rounded up to the next tick.
 *
 * @param ends where nought lies, and where the axis ends
 * @param count about so many ticks, at steps of 1, 2 or 5 times a power of ten
 */
export function axisFromNought(highest: number, [from, to]: readonly [number, number], count: number): Axis {
  const [, top] = nice(0, highest, count);
  const place = (value: number) => pixels(from + ((to - from) * value) / top);
  const values = ticks(0, top, count);
  const decimals = decimalsOf(values[1] ?? 1);
  return { place, ticks: values.map((it) => ({ at: place(it), text: fixed(it, decimals) })) };
}

/** Decimals that every multiple of a step of one digit needs. */
const decimalsOf = (step: number) => Math.max(0, -Math.floor(Math.log10(step) + 1e-9));

/** A plot over distance, ready to draw. */
export interface Plot {
  width: number;
  height: number;
  /** The part within the axes. */
  frame: { left: number; top: number; right: number; bottom: number };
  x: Tick[];
  y: Tick[];
  description: string;
}

/** Ticks of the axes of a plot over distance, about. */
const X_TICKS = 6;
const Y_TICKS = 5;

/**
 * The axes of a plot over distance, both from nought.
 *
 * @param right room beside the frame for what stands at the ends of the curves
 */
export function plotAxes(
  { width, height, right }: { width: number; height: number; right: number },
  farthest: number,
  highest: number,
): { area: Omit<Plot, 'description'>; x: Axis; y: Axis } {
  const frame = { left: 52, top: 14, right: width - right, bottom: height - 44 };
  const x = axisFromNought(farthest, [frame.left, frame.right], X_TICKS);
  const y = axisFromNought(highest, [frame.bottom, frame.top], Y_TICKS);
  return { area: { width, height, frame, x: x.ticks, y: y.ticks }, x, y };
}

/**
 * Moves labels up where they would cross one another or the axis below them.
 *
 * @param bottom the lowest place that a label may have
 * @param height room that each needs
 */
export function keepApart(labels: ReadonlyArray<{ y: number }>, bottom: number, height: number): void {
  let lowest = bottom;
  for (const label of labels.toSorted((a, b) => b.y - a.y)) {
    label.y = pixels(Math.min(label.y, lowest));
    lowest = label.y - height;
  }
}

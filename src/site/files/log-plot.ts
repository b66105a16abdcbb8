import { nice, ticks } from 'd3-array';
import type { DrawnSeries } from '../../ledger/files/drawn-series.ts';
import { fixed } from '../../words/format.ts';
import { pathThrough } from '../shared/browser/path-data.ts';
import { type Axis, type Plot, pixels } from '../shared/browser/plot.ts';

/** A log, ready to draw; lengths in CSS pixels from the top left. */
export interface LogPlot extends Plot {
  xName: string;
  yName: string;
  /** The log itself, and a curve that was put through it. */
  curves: Array<{ path: string; kind: 'log' | 'fit' }>;
  /** Level lines: hovers, the lines of a standard, the settled value. */
  levels: Array<{ x1: number; x2: number; y: number; kind: 'hover' | 'line'; text?: string; textX?: number }>;
  /** Upright lines with a word. */
  times: Array<{ x: number; text: string; textX: number; anchor: 'start' | 'end' }>;
  /** Single samples. */
  marks: Array<{ x: number; y: number }>;
}

/** So that a phone shows it all but in full size, and its letters stay legible. */
export const SIZE = { width: 430, height: 260 };
const FRAME = { left: 52, top: 18, right: SIZE.width - 16, bottom: SIZE.height - 44 };

/** An axis from one round number to another. */
export function axisBetween(
  [low, high]: readonly [number, number],
  [from, to]: readonly [number, number],
  count: number,
): Axis {
  const [bottom, top] = nice(low, high, count);
  const values = ticks(bottom, top, count);
  const step = (values[1] ?? 1) - (values[0] ?? 0);
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  const place = (value: number) => pixels(from + ((to - from) * (value - bottom)) / (top - bottom));
  return { place, ticks: values.map((it) => ({ at: place(it), text: fixed(it, decimals) })) };
}

/** The frame with its axes. */
export function logAxes(times: readonly [number, number], values: readonly [number, number]) {
  const x = axisBetween(times, [FRAME.left, FRAME.right], 6);
  const y = axisBetween(values, [FRAME.bottom, FRAME.top], 5);
  return { x, y, area: { ...SIZE, frame: FRAME, x: x.ticks, y: y.ticks } };
}

/** A log as one line: at each stretch from its lowest reading to its highest, so that no spike is lost. */
export function logPath({ times, low, high }: DrawnSeries, x: (time: number) => number, y: (value: number) => number) {
  return pathThrough(
    times.flatMap((time, i) => {
      const [bottom, top] = [low[i] as number, high[i] as number];
      const at = x(time);
      return bottom === top ? [[at, y(top)] as const] : [[at, y(bottom)] as const, [at, y(top)] as const];
    }),
  );
}

import { nice, ticks } from 'd3-array';
import type { DrawnSeries } from '../../ledger/files/drawn-series.ts';
import { fixed } from '../../words/format.ts';
import { type Axis, type Plot, pixels } from '../shared/browser/plot.ts';
import { tracedPath } from './traced-path.ts';

/** What a meter wrote, ready to draw; lengths in CSS pixels from the top left. */
export interface FilePlot extends Plot {
  xName: string;
  yName: string;
  /** `main`: the readings; `unseen`: light that nobody sees; `other`: what is held beside them; `fit`: a curve put through. */
  curves: Array<{ path: string; kind: 'main' | 'unseen' | 'other' | 'fit' }>;
  /** Level lines: hovers, the lines of a standard, the settled value; a fall of text is read from its middle. */
  levels: Array<{ x1: number; x2: number; y: number; kind: 'hover' | 'line'; text?: string; textX?: number }>;
  /** Upright lines with their words: moments, claimed wavelengths, tones. */
  uprights: Array<PlotText & { at: number; from: number; isClaim?: boolean }>;
  /** Tops of peaks. */
  tops: Array<{ x: number; y: number }>;
  /** Single samples. */
  spikes: Array<{ x: number; y: number }>;
  texts: PlotText[];
}

/** Words within a plot. */
export interface PlotText {
  x: number;
  y: number;
  text: string;
  anchor?: 'middle' | 'end';
  isStrong?: boolean;
}

/** As wide as a phone's page, so that letters are as large there as elsewhere; wider windows stretch it. */
export const WIDTH = 356;
const HEIGHT = 230;

/** The frame of a plot so high, with room for words over it and behind it. */
export function frameOf(height: number, top: number, behind: number) {
  return { left: 48, top, right: WIDTH - behind, bottom: height - 42 };
}

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

/** The frame of a log with its axes. */
export function logAxes(times: readonly [number, number], values: readonly [number, number]) {
  const frame = frameOf(HEIGHT, 18, 12);
  const x = axisBetween(times, [frame.left, frame.right], 6);
  const y = axisBetween(values, [frame.bottom, frame.top], 5);
  return { x, y, area: { width: WIDTH, height: HEIGHT, frame, x: x.ticks, y: y.ticks } };
}

/** Columns in which a log is drawn, px. */
const COLUMN = 1.5;

/** A log as one line: in each column its lowest and its highest reading in their order, so that no spike is lost. */
export function logPath({ times, low, high }: DrawnSeries, x: (time: number) => number, y: (value: number) => number) {
  const columns = new Map<number, { low: number; high: number }>();
  times.forEach((time, i) => {
    const key = Math.floor(x(time) / COLUMN);
    const column = columns.get(key);
    if (!column) columns.set(key, { low: i, high: i });
    else {
      if ((low[i] as number) < (low[column.low] as number)) column.low = i;
      if ((high[i] as number) > (high[column.high] as number)) column.high = i;
    }
  });
  return tracedPath(
    [...columns.values()].flatMap((column) => {
      const bottom = [x(times[column.low] as number), y(low[column.low] as number)] as const;
      const top = [x(times[column.high] as number), y(high[column.high] as number)] as const;
      return column.low <= column.high ? [bottom, top] : [top, bottom];
    }),
  );
}

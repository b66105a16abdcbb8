/** What a plot of a meter's file can be looked at more closely by: its readings, and what is marked among them. No DOM. */
import { fixed } from '../../../words/format.ts';
import { rounded } from '../../../words/rounded.ts';
import type { Formatted } from '../../shared/browser/read-json.ts';

export const CLOSE_FORMAT = 1;

/** A curve of a plot, its places rising. */
export interface CloseCurve {
  /** Empty where it is the only one. */
  name: string;
  x: number[];
  /** Readings; the lowest and the highest of a stretch where `high` is there. */
  y: number[];
  high?: number[];
  /** It stands beside the panel's own, and is a broken line. */
  isBeside?: boolean;
}

/** The data file of one plot. */
export interface ClosePlot extends Formatted {
  title: string;
  x: { name: string; unit: string; decimals: number; isLogarithmic?: boolean };
  y: { name: string; unit: string; digits: number; isFromNought?: boolean };
  /** What is in view first, where that is not all. */
  view?: readonly [from: number, to: number];
  curves: CloseCurve[];
  /** From here on nobody sees the light, and its line is broken. */
  unseenFrom?: number;
  uprights?: Array<{ at: number; text: string }>;
  levels?: Array<{ at: number; text: string }>;
  tops?: Array<{ x: number; y: number; text: string }>;
  /** What has to be known besides, in a sentence. */
  note?: string;
}

/** Index of the place nearest to a value; places rise. */
export function nearestIndex(places: readonly number[], value: number): number {
  let [low, high] = [0, places.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((places[middle] as number) <= value) low = middle;
    else high = middle;
  }
  return value - (places[low] as number) <= (places[high] as number) - value ? low : high;
}

/** First and last place of all curves. */
export function reachOf({ curves }: ClosePlot): [from: number, to: number] {
  return [Math.min(...curves.map((it) => it.x[0] ?? 0)), Math.max(...curves.map((it) => it.x.at(-1) ?? 0))];
}

/** What is read at a place of the first curve: `941.5 nm: 0.0123 mW/cm²/nm`; the others' nearest readings behind it. */
export function readOut(plot: ClosePlot, index: number): string {
  const { x, y, curves } = plot;
  const at = curves[0]?.x[index] ?? 0;
  const values = curves.map((it) => {
    const i = nearestIndex(it.x, at);
    const [low = 0, high = low] = [it.y[i], it.high?.[i]];
    const [from, to] = [rounded(low, y.digits), rounded(high, y.digits)];
    return `${it.name && `${it.name} `}${from === to ? from : `${from} to ${to}`} ${y.unit}`.replace(
      /^-|(?<=\s)-/g,
      '−',
    );
  });
  return `${fixed(at, x.decimals)} ${x.unit}: ${values.join(', ')}`;
}

/** A standing figure to scale, for whatever is drawn beside it. No DOM. */

import { USUAL_HEIGHT } from '../../../measure/person.ts';
import { roundedPath } from './path-data.ts';

/** Where a figure stands: the middle and the top of its head, and what a centimetre is, in units of the drawing. */
export interface PersonPlace {
  middle: number;
  top: number;
  /** Units of the drawing for a centimetre. */
  scale: number;
  /** Of the figure, cm; all of it is stretched alike. */
  height?: number;
}

/** The outline of a figure: an ellipse and a path. */
export interface PersonOutline {
  head: { cx: number; cy: number; rx: number; ry: number };
  body: string;
}

/** Half of the body's outline, cm: to the right of its middle, down from the top of the head. Our own drawing. */
const OUTLINE: ReadonlyArray<readonly [x: number, y: number]> = [
  [4.8, 21],
  [5, 27],
  [10, 29.5],
  [20, 32],
  [23.8, 38],
  [25, 52],
  [27, 68],
  [28.3, 80],
  [29, 88],
  [26.5, 92],
  [24.3, 87],
  [23.2, 78],
  [21.5, 64],
  [19.5, 51],
  [17.4, 43],
  [16.8, 57],
  [15.2, 67],
  [17.6, 82],
  [17.8, 94],
  [16.4, 110],
  [13.4, 124],
  [13, 138],
  [9.6, 157],
  [13.5, 167],
  [12, 170.5],
  [4.5, 170.5],
  [4.6, 158],
  [4.2, 140],
  [3.6, 124],
  [2.4, 106],
  [0, 86],
];

/** The outline of a standing figure, with its feet at `top` + `scale` × `height`. */
export function personOutline({ middle, top, scale, height = USUAL_HEIGHT }: PersonPlace): PersonOutline {
  const unit = (scale * height) / USUAL_HEIGHT;
  return {
    head: { cx: round(middle), cy: round(top + unit * 11.5), rx: round(unit * 7.6), ry: round(unit * 11.5) },
    body: bodyPath(middle, top, unit),
  };
}

/** The outline through the middles of its sides, each corner rounded. */
function bodyPath(middle: number, top: number, unit: number): string {
  const right = OUTLINE.map(([x, y]) => [middle + unit * x, top + unit * Math.min(y, USUAL_HEIGHT)] as const);
  const left = OUTLINE.slice(0, -1)
    .toReversed()
    .map(([x, y]) => [middle - unit * x, top + unit * Math.min(y, USUAL_HEIGHT)] as const);
  return roundedPath([...right, ...left]);
}

const round = (value: number) => Number(value.toFixed(1));

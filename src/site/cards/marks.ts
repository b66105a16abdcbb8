import type { PieceElement } from '../shared/browser/pieces.ts';
import type { INK } from './drawing-ink.ts';
import type { SetLetter } from './lettering.ts';
import type { QrCode } from './qr-code.ts';

/*
 * What a drawing is made of. Few kinds, and each says what it is, so that its file names each letter once.
 */

export type Ink = (typeof INK)[keyof typeof INK];

/** A place on a drawing, from its upper left corner. */
export interface Place {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** A rectangle with its sides along those of the drawing, filled. */
export interface Bar extends Place {
  kind: 'bar';
  fill: Ink;
}

/** A line of text from a point of its base line. */
export interface Words {
  kind: 'words';
  letters: readonly SetLetter[];
  x: number;
  y: number;
  size: number;
  fill: Ink;
}

/** The dark squares of a code. */
export interface Squares {
  kind: 'squares';
  code: QrCode;
  x: number;
  y: number;
  /** Of a square. */
  side: number;
}

/**
 * Lines, rectangles, circles, ellipses and paths, each with `fill` and `stroke` of its own, in units of their own. A
 * stroke is `stroke-width` wide and may be broken (`stroke-dasharray`); corners are sharp.
 */
export interface Shapes {
  kind: 'shapes';
  pieces: readonly PieceElement[];
  /** Where their origin lies, and how long their unit is. */
  x: number;
  y: number;
  scale: number;
}

export type Mark = Bar | Words | Squares | Shapes;

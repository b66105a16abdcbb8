import { INK } from '../../../site/cards/drawing-ink.ts';
import { darkRuns } from '../../../site/cards/drawing-svg.ts';
import type { Bar, Mark, Squares, Words } from '../../../site/cards/marks.ts';
import { drawShapes } from './draw-shapes.ts';
import { indexedPng } from './indexed-png.ts';
import { type LetterMask, letterMask } from './letter-mask.ts';
import { coveredBy, inkNumber } from './palette.ts';
import { Plane } from './plane.ts';

/**
 * A drawing as a PNG so wide, px. Bars and squares stand on whole pixels, letters on halves and their base lines on whole
 * ones: no one sees that at their size, edges are crisp, and the same letter is drawn once.
 */
export function pictureOf(
  drawing: { width: number; height: number; marks: readonly Mark[] },
  pixels: number,
): Promise<Buffer> {
  const scale = pixels / drawing.width;
  const plane = new Plane(pixels, Math.round(drawing.height * scale));
  for (const it of drawing.marks) {
    if (it.kind === 'bar') drawBar(plane, it, scale);
    else if (it.kind === 'words') drawWords(plane, it, scale);
    else if (it.kind === 'squares') drawSquares(plane, it, scale);
    else drawShapes(plane, it, scale);
  }
  return indexedPng(plane);
}

function drawBar(plane: Plane, { x, y, width, height, fill }: Bar, scale: number): void {
  const [left, right] = wholePixels(x * scale, width * scale);
  const [top, bottom] = wholePixels(y * scale, height * scale);
  plane.fill(left, top, right, bottom, inkNumber(fill));
}

/** A length on whole pixels about its middle: equally long ones stay so, and none is lost. */
function wholePixels(start: number, length: number): [from: number, to: number] {
  const whole = Math.max(1, Math.round(length));
  const from = Math.round(start + (length - whole) / 2);
  return [from, from + whole];
}

function drawSquares(plane: Plane, { rows, x, y, side }: Squares, scale: number): void {
  const place = (from: number, count: number) => Math.round((from + count * side) * scale);
  for (const [i, row] of rows.entries()) {
    for (const { start, length } of darkRuns(row)) {
      plane.fill(place(x, start), place(y, i), place(x, start + length), place(y, i + 1), inkNumber(INK.ink));
    }
  }
}

/** Letters stand on so many places of a pixel. */
const PLACES = 2;

const masks = new Map<string, LetterMask>();

/** Letters are kept while cards are made, no longer. */
export const forgetLetters = () => masks.clear();

function drawWords(plane: Plane, { letters, x, y, size, fill }: Words, scale: number): void {
  const table = coveredBy(fill);
  const px = size * scale;
  const base = Math.round(y * scale);
  for (const { letter, at } of letters) {
    const place = Math.round((x + at * size) * scale * PLACES) / PLACES;
    const whole = Math.floor(place);
    const key = `${letter.key} ${px} ${place - whole}`;
    const mask = masks.get(key) ?? letterMask(letter, px, place - whole);
    masks.set(key, mask);
    for (const row of mask.rows) plane.ink(whole + row.left, base + row.y, row.covered, row.covered.length, table);
  }
}

import { pointsOnPath } from 'points-on-path';
import { type Letter, letterOutline } from '../../../site/cards/lettering.ts';
import { coverOf, type Point } from './cover.ts';

/** How far each pixel of a letter is covered, row by row. */
export interface LetterMask {
  rows: ReadonlyArray<{ left: number; y: number; covered: Uint8Array }>;
}

/** What tells how far lines may be off a curve, in units of a typeface: a hundredth of a pixel in running text. */
const TOLERANCE = 1;

const outlines = new Map<string, Point[][]>();

/** A letter's outline in straight lines, in units of its typeface. */
function straight(letter: Letter): Point[][] {
  const known = outlines.get(letter.key) ?? pointsOnPath(letterOutline(letter), TOLERANCE);
  outlines.set(letter.key, known);
  return known;
}

/**
 * A letter as pixels, from where it begins on its base line.
 *
 * @param size px
 * @param shift to the right by this part of a pixel
 */
export function letterMask(letter: Letter, size: number, shift: number): LetterMask {
  const scale = size / letter.units;
  const rows: Array<LetterMask['rows'][number]> = [];
  coverOf(
    straight(letter).map((points) => points.map(([x, y]): Point => [x * scale + shift, y * scale])),
    (left, y, covered, count) => rows.push({ left, y, covered: covered.slice(0, count) }),
  );
  return { rows };
}

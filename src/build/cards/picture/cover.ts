import { COVERED } from './palette.ts';

export type Point = readonly [x: number, y: number];

/** A row of pixels from one on, and how far each is covered, 0 to `COVERED`; the list is only good until the next row. */
export type TakeRow = (left: number, y: number, covered: Uint8Array, count: number) => void;

/**
 * How far the pixels of a picture are covered by polygons that turn the same way, and holes that turn the other way; where
 * polygons overlap, once counts.
 *
 * Each edge says what it changes, from each pixel to the one on its right; summed along a row that gives how far each
 * pixel is covered. The area that an edge leaves on its right is taken exactly (as font-rs by Raph Levien does; from
 * memory).
 */
export function coverOf(polygons: readonly (readonly Point[])[], take: TakeRow): void {
  const box = boxOf(polygons);
  if (!box) return;
  const { left, top, width, height } = box;
  const changes = blank(width * height + 1);
  const [first, last] = [new Int32Array(height).fill(width), new Int32Array(height).fill(-1)];
  for (const points of polygons) {
    let [x0, y0] = points.at(-1) as Point;
    for (const [x, y] of points) {
      addEdge(changes, width, first, last, x0 - left, y0 - top, x - left, y - top);
      [x0, y0] = [x, y];
    }
  }
  const row = new Uint8Array(width);
  for (let y = 0; y < height; y++) {
    const [from, to] = [first[y] as number, Math.min(last[y] as number, width - 1)];
    let sum = 0;
    for (let x = from, at = y * width + from; x <= to; x++, at++) {
      sum += changes[at] as number;
      row[x - from] = Math.min(1, Math.abs(sum)) * COVERED + 0.5;
    }
    if (to >= from) take(left + from, top + y, row, to - from + 1);
  }
}

/** Whole pixels that hold all of them, with one more on the right; undefined for nothing. */
function boxOf(polygons: readonly (readonly Point[])[]) {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const points of polygons) {
    for (const [x, y] of points) {
      if (x < left) left = x;
      if (x > right) right = x;
      if (y < top) top = y;
      if (y > bottom) bottom = y;
    }
  }
  if (left > right) return undefined;
  [left, top] = [Math.floor(left), Math.floor(top)];
  return { left, top, width: Math.floor(right) - left + 2, height: Math.ceil(bottom) - top };
}

let spare = new Float32Array(0);

/** Memory that holds nothing but noughts; the same one each time. */
function blank(size: number): Float32Array {
  if (spare.length < size) spare = new Float32Array(size);
  return spare.fill(0, 0, size);
}

function addEdge(
  changes: Float32Array,
  width: number,
  first: Int32Array,
  last: Int32Array,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
): void {
  if (y0 === y1) return;
  const isDown = y0 < y1;
  const top = isDown ? y0 : y1;
  const bottom = isDown ? y1 : y0;
  const slope = (x1 - x0) / (y1 - y0);
  let x = isDown ? x0 : x1;
  for (let row = Math.floor(top); row < bottom; row++) {
    const height = Math.min(row + 1, bottom) - Math.max(row, top);
    // Rounding may not lead past the edge's own end.
    const next = row + 1 >= bottom ? (isDown ? x1 : x0) : x + slope * height;
    const change = isDown ? height : -height;
    const from = Math.min(x, next);
    const to = Math.max(x, next);
    const start = Math.floor(from);
    if (start < (first[row] as number)) first[row] = start;
    let at = row * width + start;
    if (to <= start + 1) {
      // Within one pixel: the middle of the edge says how much of it lies on the right.
      const right = (from + to) / 2 - start;
      changes[at] = (changes[at] as number) + change * (1 - right);
      changes[at + 1] = (changes[at + 1] as number) + change * right;
      if (start + 1 > (last[row] as number)) last[row] = start + 1;
    } else {
      // Over several: what is covered up to the right side of each, less what was before.
      let before = 0;
      let pixel = start;
      for (; pixel < to; pixel++, at++) {
        const low = Math.max(from, pixel);
        const high = Math.min(to, pixel + 1);
        // Parts of the edge that lie left of this pixel, and in it; those count by where their middle is.
        const covered = (low - from + (high - low) * (pixel + 1 - (low + high) / 2)) / (to - from);
        changes[at] = (changes[at] as number) + change * (covered - before);
        before = covered;
      }
      changes[at] = (changes[at] as number) + change * (1 - before);
      if (pixel > (last[row] as number)) last[row] = pixel;
    }
    x = next;
  }
}

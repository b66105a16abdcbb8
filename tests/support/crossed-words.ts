/** Where a sketch's words are crossed by what it draws. */
import { Drawing } from '../../src/site/cards/drawing.ts';
import { drawSketch } from '../../src/site/cards/sketch-drawing.ts';
import type { Sketch } from '../../src/site/methods/sketches/sketch.ts';
import type { PieceElement } from '../../src/site/shared/browser/pieces.ts';
import { type Box, boxOf } from './drawing-faults.ts';

type Point = readonly [x: number, y: number];
type Segment = readonly [from: Point, to: Point];

/** What is drawn strong enough to make words hard to read; thin and broken lines may pass under a letter's edge. */
const STRONG = new Set(['ink', 'accent', 'accent-fill']);

/** Words of a sketch that lie on one another, or on a strong line or a filled shape, at a letter size in its units. */
export function crossedWords(sketch: Sketch, letters: number): string[] {
  const { width, height, pieces } = sketch;
  const drawing = new Drawing(width, height);
  drawSketch(drawing, sketch, { x: 0, y: 0, width, height }, letters);
  const faults: string[] = [];
  for (const [i, run] of drawing.runs.entries()) {
    const own = boxOf(run);
    for (const other of drawing.runs.slice(i + 1)) {
      if (meet(own, boxOf(other))) faults.push(`"${run.text}" lies on "${other.text}"`);
    }
    for (const it of pieces) {
      if (STRONG.has(String(it.attributes.class)) && isCrossed(own, it))
        faults.push(`"${run.text}" is crossed by a ${it.tag}`);
    }
  }
  return faults;
}

function isCrossed(box: Box, { tag, attributes }: PieceElement): boolean {
  const at = (name: string) => Number(attributes[name]);
  const isFilled = attributes.class === 'accent-fill';
  if (tag === 'line')
    return isCut(box, [
      [at('x1'), at('y1')],
      [at('x2'), at('y2')],
    ]);
  if (tag === 'circle') {
    const [x, y, r] = [at('cx'), at('cy'), at('r')];
    const nearest = Math.hypot(x - clamp(x, box.left, box.right), y - clamp(y, box.top, box.bottom));
    const farthest = Math.hypot(Math.max(x - box.left, box.right - x), Math.max(y - box.top, box.bottom - y));
    return nearest < r && (isFilled || farthest > r);
  }
  if (tag === 'rect') {
    const [left, top] = [at('x'), at('y')];
    const [right, bottom] = [left + at('width'), top + at('height')];
    if (isFilled) return meet(box, { left, top, right, bottom });
    const corners: Point[] = [
      [left, top],
      [right, top],
      [right, bottom],
      [left, bottom],
      [left, top],
    ];
    return segments(corners).some((it) => isCut(box, it));
  }
  return pathLines(String(attributes.d)).some((it) => isCut(box, it));
}

/** The straight lines of a path, and bent ones by twenty parts of them; relative steps and arcs are left out. */
function pathLines(d: string): Segment[] {
  const found: Segment[] = [];
  let here: Point = [0, 0];
  for (const [, step = '', rest = ''] of d.matchAll(/([A-Za-z])([^A-Za-z]*)/g)) {
    const numbers = [...rest.matchAll(/-?[\d.]+/g)].map(Number);
    const [a = 0, b = 0, c = 0, e = 0, f = 0, g = 0] = numbers;
    if (step === 'M') here = [a, b];
    const next: Point[] =
      step === 'L'
        ? [[a, b]]
        : step === 'H'
          ? [[a, here[1]]]
          : step === 'V'
            ? [[here[0], a]]
            : step === 'C'
              ? bent(here, [a, b], [c, e], [f, g])
              : [];
    found.push(...segments([here, ...next]));
    here = next.at(-1) ?? here;
  }
  return found;
}

const bent = (from: Point, one: Point, two: Point, to: Point): Point[] =>
  Array.from({ length: 20 }, (_, i) => (i + 1) / 20).map((t) => {
    const along = (k: 0 | 1) =>
      (1 - t) ** 3 * from[k] + 3 * (1 - t) ** 2 * t * one[k] + 3 * (1 - t) * t ** 2 * two[k] + t ** 3 * to[k];
    return [along(0), along(1)];
  });

const segments = (points: readonly Point[]): Segment[] => points.slice(1).map((to, i) => [points[i] ?? to, to]);

/** Whether a line passes through a box (Liang and Barsky's clipping). */
function isCut({ left, right, top, bottom }: Box, [[x1, y1], [x2, y2]]: Segment): boolean {
  let [from, to] = [0, 1];
  for (const [step, room] of [
    [x1 - x2, x1 - left],
    [x2 - x1, right - x1],
    [y1 - y2, y1 - top],
    [y2 - y1, bottom - y1],
  ] as const) {
    if (step === 0 && room < 0) return false;
    if (step < 0) from = Math.max(from, room / step);
    if (step > 0) to = Math.min(to, room / step);
  }
  return from < to;
}

const meet = (one: Box, other: Box) =>
  one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom;

const clamp = (value: number, from: number, to: number) => Math.min(to, Math.max(from, value));

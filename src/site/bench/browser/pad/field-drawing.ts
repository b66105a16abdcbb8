/** The field on the pad's screen: where the sensor goes now, and what has been read. To one scale, both ways. No DOM. */
import { type PieceElement, piece } from '../../../shared/browser/pieces.ts';

/** A place that is drawn. */
export interface DrawnPlace {
  /** cm from the left and upper edge of the LED field; past the edges it lies outside. */
  x: number;
  y: number;
  label: string;
  state: 'todo' | 'read' | 'odd';
  isNow: boolean;
}

interface Sides {
  width: number;
  height: number;
}

/** Length of the drawing's longer side, in its own units; about pixels on a tablet. */
const LONGEST = 320;
const LARGEST = 15;
const OF_GAP = 0.42;
/** Numbers smaller than this can't be read in the dark. */
const LEAST_LETTER = 8;

const short = (value: number) => Number(value.toFixed(1));

/**
 * The field with its places.
 *
 * @param field cm
 * @param label what it shows, in words
 * @param hasWay draws the way from one to the next
 */
export function placesDrawing(field: Sides, places: readonly DrawnPlace[], label: string, hasWay = true): PieceElement {
  const left = Math.min(0, ...places.map((it) => it.x));
  const top = Math.min(0, ...places.map((it) => it.y));
  const width = Math.max(field.width, ...places.map((it) => it.x)) - left;
  const height = Math.max(field.height, ...places.map((it) => it.y)) - top;
  const scale = LONGEST / Math.max(width, height);
  const at = ({ x, y }: { x: number; y: number }) => ({ x: short((x - left) * scale), y: short((y - top) * scale) });
  const spots = places.map((it) => ({ ...it, ...at(it) }));
  const radius = radiusOf(spots);
  const margin = LARGEST + 7;
  const corner = at({ x: 0, y: 0 });
  return piece(
    'svg',
    {
      class: 'pad-field',
      role: 'img',
      'aria-label': label,
      viewBox: [-margin, -margin, short(width * scale + 2 * margin), short(height * scale + 2 * margin)].join(' '),
    },
    piece('rect', { class: 'leds', ...corner, width: short(field.width * scale), height: short(field.height * scale) }),
    hasWay &&
      spots.length > 1 &&
      piece('path', { class: 'way', d: `M${spots.map(({ x, y }) => `${x} ${y}`).join('L')}` }),
    // The present one last, over its neighbours.
    ...spots.toSorted((a, b) => Number(a.isNow) - Number(b.isNow)).flatMap((it) => spotPieces(it, radius)),
  );
}

/** So large that neighbours don't touch. */
function radiusOf(spots: ReadonlyArray<{ x: number; y: number }>): number {
  const gaps = spots.flatMap((a, i) => spots.slice(i + 1).map((b) => Math.hypot(a.x - b.x, a.y - b.y)));
  return short(Math.min(LARGEST, OF_GAP * Math.min(...gaps, LONGEST)));
}

function spotPieces({ x, y, label, state, isNow }: DrawnPlace, usual: number): PieceElement[] {
  const radius = isNow ? Math.max(usual, 11) : usual;
  const letter = short(radius * (label.length > 1 ? 1.05 : 1.3));
  return [
    ...(isNow ? [piece('circle', { class: 'ring', cx: x, cy: y, r: radius + 5 })] : []),
    piece('circle', { class: isNow ? 'now' : state, cx: x, cy: y, r: radius }),
    ...(letter < LEAST_LETTER
      ? []
      : [piece('text', { class: isNow ? 'now' : state, x, y, 'font-size': letter }, label)]),
  ];
}

/**
 * The distances of a sweep from the side: the panel at the left, each distance to scale.
 *
 * @param distances cm
 */
export function sweepDrawing(
  distances: ReadonlyArray<Omit<DrawnPlace, 'x' | 'y'> & { cm: number }>,
  label: string,
): PieceElement {
  const farthest = Math.max(...distances.map((it) => it.cm));
  const scale = LONGEST / farthest;
  const spots = distances.map(({ cm, ...it }) => ({ ...it, x: short(cm * scale), y: 40 }));
  const radius = Math.max(radiusOf(spots), 6);
  return piece(
    'svg',
    { class: 'pad-field', role: 'img', 'aria-label': label, viewBox: `-14 0 ${LONGEST + 40} 80` },
    piece('rect', { class: 'leds', x: -8, y: 4, width: 8, height: 72 }),
    piece('path', { class: 'way', d: `M0 40H${LONGEST}` }),
    ...spots.toSorted((a, b) => Number(a.isNow) - Number(b.isNow)).flatMap((it) => spotPieces(it, radius)),
  );
}

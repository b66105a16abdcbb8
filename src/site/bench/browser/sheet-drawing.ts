/** The LED field of a run sheet, drawn to a scale that a rule can be held against. No DOM. */
import { type Piece, type PieceElement, piece } from '../../shared/browser/pieces.ts';
import { BEYOND_PLACES, type SheetPoint } from './sheet-points.ts';

/** Room for the drawings on paper, mm. */
const ROOM = { width: 72, height: 64 };
/** The same where there are so many points that their tables stand under it. */
const LOW_ROOM = { width: 160, height: 54 };
/** Scales as drawings have them: 1 to so many. */
const SCALES = [1, 2, 2.5, 5, 10, 15, 20, 25, 30, 40, 50, 100];
const MARGIN = 5;
/** Radius of a point's circle, mm, and how much of the way to its neighbour it may take. */
const LARGEST = 2.4;
const OF_GAP = 0.4;

interface Sides {
  width: number;
  height: number;
}

/** The largest scale at which a rectangle (cm) has room (mm): 1 to how many. */
export function scaleFor({ width, height }: Sides, room: Sides): number {
  const needed = Math.max((10 * width) / room.width, (10 * height) / room.height);
  return SCALES.find((it) => it >= needed) ?? Math.ceil(needed / 50) * 50;
}

const short = (value: number) => Number(value.toFixed(2));

/** What is drawn: the picture, its scale, and what it shows in words. */
export interface Drawing {
  picture: PieceElement;
  scale: number;
}

function frame(width: number, height: number, label: string, pieces: Piece[], name: string): PieceElement {
  const attributes = {
    class: name,
    role: 'img',
    'aria-label': label,
    viewBox: `0 0 ${short(width)} ${short(height)}`,
    width: `${short(width)}mm`,
    height: `${short(height)}mm`,
  };
  return piece('svg', attributes, ...pieces);
}

/**
 * The field with its numbered points and the way between them.
 *
 * @param field cm
 * @param isDense the tables of its points stand under it
 */
export function fieldDrawing(field: Sides, points: readonly SheetPoint[], isDense = false): Drawing {
  const scale = scaleFor(field, isDense ? LOW_ROOM : ROOM);
  const mm = (cm: number) => (10 * cm) / scale;
  const places = points.flatMap(({ number, place }) =>
    place ? [{ number, x: MARGIN + mm(place.x), y: MARGIN + mm(place.y) }] : [],
  );
  const nearest = Math.min(
    ...places.slice(1).map((it, i) => Math.hypot(it.x - (places[i]?.x ?? 0), it.y - (places[i]?.y ?? 0))),
    Number.POSITIVE_INFINITY,
  );
  const radius = short(Math.min(LARGEST, OF_GAP * nearest));
  const [width, height] = [mm(field.width) + 2 * MARGIN, mm(field.height) + 2 * MARGIN];
  const picture = frame(
    width,
    height,
    `The LED field to scale, with ${points.length} numbered points in the order of reading.`,
    [
      piece('rect', {
        class: 'leds',
        x: MARGIN,
        y: MARGIN,
        width: short(mm(field.width)),
        height: short(mm(field.height)),
      }),
      piece('path', { class: 'way', d: `M${places.map(({ x, y }) => `${short(x)} ${short(y)}`).join('L')}` }),
      piece('path', {
        class: 'corner',
        d: `M${MARGIN - 3.5} ${MARGIN}H${MARGIN + 1.5}M${MARGIN} ${MARGIN - 3.5}V${MARGIN + 1.5}`,
      }),
      ...places.flatMap(({ number, x, y }) => [
        piece('circle', { cx: short(x), cy: short(y), r: radius }),
        piece(
          'text',
          { x: short(x), y: short(y), 'font-size': short(radius * (number > 9 ? 1.25 : 1.5)) },
          String(number),
        ),
      ]),
    ],
    'bench-field',
  );
  return { picture, scale };
}

/** Room for the field beside the places past its edges, and where these stand, mm from the edge: their distances would else crowd before a large field. */
const SMALL_ROOM = { width: 20, height: 24 };
const AWAY = [5, 11, 18];
const FARTHEST = 22;

/** The field and the places past its edges; only the field’s own sides are to one scale. */
export function aroundDrawing({ width, height }: Sides): PieceElement {
  const shrink = Math.min(SMALL_ROOM.width / width, SMALL_ROOM.height / height);
  const [wide, high] = [width * shrink, height * shrink];
  const places = BEYOND_PLACES.map(({ edge, index }, i) => {
    const away = AWAY[i % AWAY.length] ?? FARTHEST;
    return edge === 'right'
      ? { index, x: 1 + wide + away, y: FARTHEST + high / 2 }
      : { index, x: 1 + wide / 2, y: FARTHEST - away };
  });
  return frame(
    wide + FARTHEST + 2,
    high + FARTHEST + 1,
    'The LED field, places A, B and C in a row to the right of its right edge, D, E and F above its top edge.',
    [
      piece('rect', { class: 'leds', x: 1, y: FARTHEST, width: short(wide), height: short(high) }),
      ...places.flatMap(({ index, x, y }) => [
        piece('circle', { class: 'place', cx: short(x), cy: short(y), r: 0.6 }),
        piece('text', { x: short(x + 1.9), y: short(y - 1.6), 'font-size': 2.8 }, LETTERS[index] ?? ''),
      ]),
    ],
    'bench-field',
  );
}

/** Names of the places past the edges. */
export const LETTERS = BEYOND_PLACES.map((_, i) => String.fromCharCode('A'.charCodeAt(0) + i));

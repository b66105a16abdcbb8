/** A panel to scale beside a standing figure, with its readings; what is too small to read stands enlarged beside it. */
import type { PanelEntry } from '../../ledger/ledger.ts';
import { USUAL_HEIGHT } from '../../measure/person.ts';
import { fixed } from '../../words/format.ts';
import { personOutline } from '../shared/browser/person-outline.ts';
import { type PieceElement, piece } from '../shared/browser/pieces.ts';
import type { DrawnPoint, GridDrawing } from './grid-drawing.ts';

/** A rectangle of a drawing. */
interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** The drawing, and what it says to who can't see it. */
export interface StandingDrawing {
  drawing: PieceElement;
  /** The readings stand in an enlargement. */
  isEnlarged: boolean;
}

const WIDTH = 360;
const HEIGHT = 420;
const FLOOR = HEIGHT - 6;
/** Room above the tallest thing, for a number over its edge. */
const TOP = 20;
/** Half of a figure's width, cm, with its arms. */
const HALF_PERSON = 30;
/** Room for a number of one decimal beside a point, units of the drawing. */
const NUMBER = 30;
const LINE = 14;
/** A point's number over its dot. */
const OVER_DOT = 8;
/** Numbers can be read beside their points from these distances between points on. */
const LEGIBLE = { x: 14, y: 26, field: 36 };
const LARGEST_DOT = 7;
const LARGEST_NUMBERED = 20;
/** Middle of a hung panel, cm from the floor; what is too tall for it hangs lower, or stands. */
const HUNG_AT = 105;

/** What is known of a panel's sizes, cm. */
interface Sizes {
  field: { width: number; height: number } | undefined;
  housing: { width: number; height: number } | undefined;
}

/** Undefined where neither the field nor the housing was measured. */
export function standingDrawing(panel: PanelEntry, grid: GridDrawing | undefined): StandingDrawing | undefined {
  const sizes = sizesOf(panel);
  const outer = {
    width: Math.max(sizes.field?.width ?? 0, sizes.housing?.width ?? 0),
    height: Math.max(sizes.field?.height ?? 0, sizes.housing?.height ?? 0),
  };
  if (outer.width === 0) return undefined;
  const roomX = WIDTH - 2 * NUMBER - 8;
  const tallest = Math.max(USUAL_HEIGHT, outer.height);
  const scale = Math.min((FLOOR - TOP) / tallest, roomX / (2 * HALF_PERSON + outer.width + 6));
  const isLegible =
    grid?.columns === 3 &&
    grid.gapX * scale >= LEGIBLE.x &&
    grid.gapY * scale >= LEGIBLE.y &&
    grid.width * scale >= LEGIBLE.field;
  const isEnlarged = grid !== undefined && !isLegible;

  const middle = HALF_PERSON * scale + 2;
  const left = isEnlarged ? 2 * middle + 6 : (2 * middle + WIDTH - outer.width * scale) / 2;
  const lift = Math.max(0, Math.min(HUNG_AT - outer.height / 2, tallest - outer.height));
  const bottom = FLOOR - lift * scale;
  const centre = { x: left + (outer.width * scale) / 2, y: bottom - (outer.height * scale) / 2 };
  const person = personOutline({ middle, top: FLOOR - USUAL_HEIGHT * scale, scale });
  const small = boxAround(centre, outer, scale);
  const drawing = piece(
    'svg',
    {
      class: 'standing',
      viewBox: `0 0 ${WIDTH} ${HEIGHT}`,
      width: WIDTH,
      height: HEIGHT,
      role: 'img',
      'aria-label': description(sizes, grid),
    },
    piece('path', { class: 'floor', d: `M0 ${FLOOR}H${WIDTH}` }),
    piece('ellipse', { class: 'body', ...person.head }),
    piece('path', { class: 'body', d: person.body }),
    ...panelPieces(sizes, centre, scale),
    ...(grid && !isEnlarged && sizes.field
      ? points(
          grid,
          boxAround(centre, sizes.field, scale),
          scale,
          Math.min(LARGEST_DOT, 0.36 * Math.min(grid.gapX, grid.gapY) * scale),
          small,
        )
      : []),
    ...(grid && isEnlarged ? enlargement(grid, sizes, outer, small) : []),
  );
  return { drawing, isEnlarged };
}

function sizesOf({ data: { field, housing } }: PanelEntry): Sizes {
  const size = (it: typeof field) => it && { width: it.width.value, height: it.height.value };
  return { field: size(field), housing: size(housing) };
}

function boxAround(centre: { x: number; y: number }, size: { width: number; height: number }, scale: number): Box {
  const [width, height] = [size.width * scale, size.height * scale];
  return {
    x: round(centre.x - width / 2),
    y: round(centre.y - height / 2),
    width: round(width),
    height: round(height),
  };
}

/** The housing and the LED field, both about one middle. */
function panelPieces({ field, housing }: Sizes, centre: { x: number; y: number }, scale: number): PieceElement[] {
  return [
    ...(housing ? [piece('rect', { class: 'housing', ...boxAround(centre, housing, scale) })] : []),
    ...(field ? [piece('rect', { class: 'leds', ...boxAround(centre, field, scale) })] : []),
  ];
}

/** A dot whose area goes by its reading. */
function dot({ share }: DrawnPoint, x: number, y: number, largest: number): PieceElement {
  const radius = share === undefined ? largest / 2 : Math.max(0.8, largest * Math.sqrt(share));
  return piece('circle', {
    class: share === undefined && 'struck',
    cx: round(x),
    cy: round(y),
    r: round(radius),
  });
}

/** Where the numbers of the outer columns end and begin: at the sides of a box, or beside their dots. */
type Beside = Box | 'dots';

/** Dots on the field with their numbers: on dots that are wide enough, else of three columns left, over and right of them. */
function points(grid: GridDrawing, field: Box, scale: number, largest: number, beside: Beside): PieceElement[] {
  const isOnDots = grid.gapX * scale >= NUMBER && grid.gapY * scale >= LINE && beside === 'dots';
  const isThree = grid.columns === 3 && !isOnDots;
  // Where many points crowd, the table alone has their numbers.
  const hasNumbers = isThree || isOnDots;
  const drawn = grid.points.map((point, i) => {
    const [x, y] = [field.x + point.x * scale, field.y + point.y * scale];
    const [left, right] =
      beside === 'dots' ? [x - largest + 4, x + largest - 4] : [beside.x + 2, beside.x + beside.width - 2];
    const column = isThree ? i % 3 : undefined;
    const place =
      column === 0
        ? { x: round(left - OVER_DOT), y: round(y + 4) }
        : column === 2
          ? { x: round(right + OVER_DOT), y: round(y + 4) }
          : { x: round(x), y: round(column === 1 ? y - largest - 4 : y + 4) };
    return { dot: dot(point, x, y, largest), text: piece('text', place, point.text) };
  });
  return [
    ...drawn.map((it) => it.dot),
    // The style sheet knows by their order which numbers end at their places, begin there, or have them in their middle.
    ...(hasNumbers ? [piece('g', { class: isThree ? 'three' : 'on' }, ...drawn.map((it) => it.text))] : []),
  ];
}

/** The field again, as large as there is room for, with its numbers on the dots and a length to tell its scale. */
function enlargement(
  grid: GridDrawing,
  sizes: Sizes,
  outer: { width: number; height: number },
  small: Box,
): PieceElement[] {
  const from = small.x + small.width + 22;
  const room = { width: WIDTH - from - 1, height: 300 };
  const scale = Math.min(room.width / outer.width, room.height / outer.height);
  const centre = {
    x: from + room.width / 2,
    y: Math.max(small.y + small.height / 2, TOP + (outer.height * scale) / 2),
  };
  centre.y = Math.min(centre.y, FLOOR - 34 - (outer.height * scale) / 2);
  const large = boxAround(centre, outer, scale);
  const field = boxAround(centre, { width: grid.width, height: grid.height }, scale);
  const length = roundLength(70 / scale);
  const [bar, under] = [length * scale, large.y + large.height + 12];
  return [
    piece('path', {
      class: 'lens',
      d: `M${round(small.x + small.width)} ${small.y}L${large.x} ${large.y}M${round(small.x + small.width)} ${round(small.y + small.height)}L${large.x} ${round(large.y + large.height)}`,
    }),
    ...panelPieces(sizes, centre, scale),
    ...points(grid, field, scale, Math.min(LARGEST_NUMBERED, 0.4 * Math.min(grid.gapX, grid.gapY) * scale), 'dots'),
    piece('path', {
      class: 'rule',
      d: `M${large.x} ${round(under - 3)}v6M${large.x} ${round(under)}h${round(bar)}m0-3v6`,
    }),
    piece('text', { class: 'length', x: round(large.x + bar + 6), y: round(under + 4) }, `${length} cm`),
  ];
}

/** The greatest of 1, 2 and 5 times a power of ten that is no longer. */
function roundLength(most: number): number {
  const power = 10 ** Math.floor(Math.log10(most));
  const step = [5, 2, 1].find((it) => it * power <= most) ?? 1;
  return Number((step * power).toPrecision(1));
}

function description({ field, housing }: Sizes, grid: GridDrawing | undefined): string {
  const size = (it: { width: number; height: number }) => `${fixed(it.width, 1)} by ${fixed(it.height, 1)} cm`;
  const what = [field && `LED field ${size(field)}`, housing && `housing ${size(housing)}`].filter(Boolean).join(', ');
  const beside = `${what}, to scale beside a standing figure of ${USUAL_HEIGHT} cm`;
  if (!grid) return beside;
  const rows = Array.from({ length: grid.points.length / grid.columns }, (_, i) =>
    grid.points.slice(i * grid.columns, (i + 1) * grid.columns).map((it) => it.text),
  );
  return `${beside}; readings in mW/cm², row by row: ${rows.map((it) => it.join(', ')).join('; ')}`;
}

const round = (value: number) => Number(value.toFixed(1));

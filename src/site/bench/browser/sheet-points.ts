/** The points of a run sheet in the order in which they are read. No DOM. */
import { gridGeometry } from '../../../measure/irradiance/grid-geometry.ts';
import { pointRoute, travel } from '../../../measure/irradiance/point-route.ts';
import { CM_PER_INCH } from '../../../measure/unit-factors.ts';
import { fixed } from '../../../words/format.ts';
import type { SheetGrid } from './sheet-setup.ts';

/** A point of the sheet. */
export interface SheetPoint {
  /** From 1, in the order of reading. */
  number: number;
  /** Field of the content file: `grid.rows[0][1]`. */
  path: string;
  /** From the field's left edge and from its top one, in words. */
  across: string;
  down: string;
  /** The same in cm; undefined where the field is not known. */
  place: { x: number; y: number } | undefined;
}

export interface SheetPoints {
  points: SheetPoint[];
  /** cm that the sensor moves over the grid, and in reading order; undefined where the field is not known. */
  travel: { shortest: number; readingOrder: number } | undefined;
}

/** The points of a grid; where its field is not known, their places are formulas of its sides. */
export function sheetPoints({ field, columns, rows, inset, fault }: SheetGrid): SheetPoints {
  const geometry = field && !fault && gridGeometry(columns, rows, field.width.cm, field.height.cm, inset.cm);
  // Of an unknown field only the numbers of points are known: taken for a square, they are passed by rows.
  const known = geometry || { x: places(columns), y: places(rows) };
  const points = pointRoute(known).map(
    ({ row, column, x, y }, i): SheetPoint => ({
      number: i + 1,
      path: `grid.rows[${row}][${column}]`,
      across: geometry ? bothUnits(x) : formula(column, columns, 'width', inset.written),
      down: geometry ? bothUnits(y) : formula(row, rows, 'height', inset.written),
      place: geometry ? { x, y } : undefined,
    }),
  );
  if (!geometry) return { points, travel: undefined };
  const inOrder = geometry.y.flatMap((y) => geometry.x.map((x) => ({ x, y })));
  return { points, travel: { shortest: travel(pointRoute(geometry)), readingOrder: travel(inOrder) } };
}

const places = (count: number) => Array.from({ length: count }, (_, i) => i);

/** `2.54 cm (1.00 in)` */
export const bothUnits = (cm: number) => `${fixed(cm, 2)} cm (${fixed(cm / CM_PER_INCH, 2)} in)`;

/** Where a point of `count` lies along a side that is not known. */
function formula(i: number, count: number, side: 'width' | 'height', inset: string): string {
  if (count === 1 || 2 * i === count - 1) return `½ ${side}`;
  if (i === 0) return inset;
  if (i === count - 1) return `${side} − ${inset}`;
  return `${inset} + ${i}/${count - 1} (${side} − 2 × ${inset})`;
}

/** Where light past the edges is read: straight out from the middle of an edge, cm. */
export const BEYOND_PAST = [8, 20, 40] as const;
export const BEYOND_EDGES = ['right', 'top'] as const;

/** The places past the edges, with the field of each in the content file. */
export const BEYOND_PLACES = BEYOND_EDGES.flatMap((edge, e) =>
  BEYOND_PAST.map((past, i) => ({ edge, past, index: e * BEYOND_PAST.length + i })),
);

/** Distances of the sweep, cm. */
export const SWEEP = [10, 20, 30, 60] as const;

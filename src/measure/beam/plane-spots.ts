import { at } from '../at.ts';
import { gridGeometry } from '../irradiance/grid-geometry.ts';
import { type Emitter, type Field, isEven } from './emitter.ts';
import type { Spot } from './plane-model.ts';

/** The n x m points of a grid whose outer ones lie `inset` cm inside the edges of the LED field. */
export interface GridShape {
  columns: number;
  rows: number;
  inset: number;
}

/**
 * The points of a grid, row by row from the top, from the left; undefined where the field is too small for the
 * inset.
 */
export function gridSpots(grid: GridShape, field: Field): Spot[] | undefined {
  const geometry = gridGeometry(grid.columns, grid.rows, field.width, field.height, grid.inset);
  return geometry?.y.flatMap((y) => geometry.x.map((x) => ({ x: x - field.width / 2, y: field.height / 2 - y })));
}

/**
 * Places among which the brightest is to be sought, whatever the beam: before an LED and between LEDs, in the middle of
 * the field and half-way to its edges, where an unevenly driven panel may be brighter; or a raster over the field of a
 * panel whose groups differ. Their number depends on the layout alone.
 */
export function peakCandidates(emitter: Emitter, field: Field): Spot[] {
  if (!isEven(emitter)) {
    const raster = Array.from({ length: 9 }, (_, i) => (i - 4) / 9);
    return raster.flatMap((y) => raster.map((x) => ({ x: x * field.width, y: y * field.height })));
  }
  const leds = emitter.kind === 'leds' ? emitter : undefined;
  /** Places along one axis: those of the middle, and all. */
  const along = (count: number | undefined, side: number): [middle: number[], all: number[]] => {
    if (!leds || count === undefined) return [[0], [0, -side / 4, side / 4]];
    if (count === 1) return [[0], [0]];
    const half = (side - leds.ledSize) / (count - 1) / 2;
    const aside = half * Math.max(1, 2 * Math.round(side / 8 / half) + (count % 2));
    return [
      [0, half],
      [0, half, -aside, aside],
    ];
  };
  const [middleX, allX] = along(leds?.columns, field.width);
  const [middleY, allY] = along(leds?.rows, field.height);
  // A cross: the middle both ways, and each way on from there.
  const spots = [
    ...allY.flatMap((y) => middleX.map((x) => ({ x, y }))),
    ...allX.flatMap((x) => middleY.map((y) => ({ x, y }))),
  ];
  return [...new Map(spots.map((it) => [`${it.x}:${it.y}`, it])).values()];
}

/**
 * Places among which the dimmest is to be sought, whatever the beam: the corners of the field, and where narrow beams
 * leave gaps, the middle of the gaps next to them.
 */
export function dimCandidates(emitter: Emitter, field: Field): Spot[] {
  const [a, b] = [field.width / 2, field.height / 2];
  if (emitter.kind === 'continuous') return [{ x: a, y: b }];
  const gap = (count: number, edge: number) => {
    const outer = edge - emitter.ledSize / 2;
    return count > 1 ? [edge, outer * ((count - 2) / (count - 1))] : [edge];
  };
  // Both in the corner, or both in the gap next to it: what lies between is no darker than the darker of the two.
  const [across, down] = [gap(emitter.columns, a), gap(emitter.rows, b)];
  return across.flatMap((x, i) => {
    const y = at(down, Math.min(i, down.length - 1));
    return [x, -x].flatMap((at) => [
      { x: at, y },
      { x: at, y: -y },
    ]);
  });
}

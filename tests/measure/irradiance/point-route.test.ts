import fc from 'fast-check';
import { expect, test } from 'vitest';
import { gridGeometry } from '../../../src/measure/irradiance/grid-geometry.ts';
import { pointRoute, travel } from '../../../src/measure/irradiance/point-route.ts';

type Place = { x: number; y: number };

const geometryOf = (columns: number, rows: number, width: number, height: number) => {
  const geometry = gridGeometry(columns, rows, width, height, Math.min(width, height) / 6);
  if (!geometry) throw new Error('the points would cross');
  return geometry;
};

const readingOrder = ({ x, y }: { x: number[]; y: number[] }): Place[] =>
  y.flatMap((down) => x.map((across) => ({ x: across, y: down })));

/** The least travel over all points, by trying every order (Held and Karp), from any point to any. */
function leastTravel(places: readonly Place[]): number {
  const count = places.length;
  const apart = (i: number, j: number) => travel([places[i] as Place, places[j] as Place]);
  const least = Array.from({ length: 1 << count }, () => new Float64Array(count).fill(Number.POSITIVE_INFINITY));
  for (let i = 0; i < count; i++) (least[1 << i] as Float64Array)[i] = 0;
  for (let been = 1; been < 1 << count; been++) {
    for (let last = 0; last < count; last++) {
      const so = (least[been] as Float64Array)[last] as number;
      if (!Number.isFinite(so)) continue;
      for (let next = 0; next < count; next++) {
        if (been & (1 << next)) continue;
        const onward = least[been | (1 << next)] as Float64Array;
        onward[next] = Math.min(onward[next] as number, so + apart(last, next));
      }
    }
  }
  return Math.min(...(least.at(-1) as Float64Array));
}

const side = fc.double({ min: 5, max: 200, noNaN: true });
const count = fc.integer({ min: 1, max: 9 });

test('passes each point once, and is never longer than reading order', () => {
  fc.assert(
    fc.property(count, count, side, side, (columns, rows, width, height) => {
      const geometry = geometryOf(columns, rows, width, height);
      const route = pointRoute(geometry);
      expect(new Set(route.map((it) => `${it.row}:${it.column}`)).size).toBe(columns * rows);
      for (const { row, column, x, y } of route) expect([x, y]).toEqual([geometry.x[column], geometry.y[row]]);
      expect(travel(route)).toBeLessThanOrEqual(travel(readingOrder(geometry)) + 1e-9);
    }),
  );
});

test.each([
  [3, 3, 20, 20],
  [3, 3, 20, 60],
  [3, 3, 60, 20],
  [2, 5, 20, 40],
  [5, 2, 30, 12],
  [3, 4, 18, 90],
  [1, 6, 10, 60],
  [6, 1, 60, 10],
])('no order of %i × %i points in %i × %i cm is shorter', (columns, rows, width, height) => {
  const geometry = geometryOf(columns, rows, width, height);
  expect(travel(pointRoute(geometry))).toBeCloseTo(leastTravel(readingOrder(geometry)), 9);
});

test('begins at the upper left, and goes by rows where both ways are alike', () => {
  const way = pointRoute(geometryOf(3, 3, 20, 20)).map((it) => `${it.row}${it.column}`);
  expect(way).toEqual(['00', '01', '02', '12', '11', '10', '20', '21', '22']);
});

test('a wide field is passed by columns', () => {
  const way = pointRoute(geometryOf(3, 2, 60, 12)).map((it) => `${it.row}${it.column}`);
  expect(way).toEqual(['00', '10', '11', '01', '02', '12']);
});

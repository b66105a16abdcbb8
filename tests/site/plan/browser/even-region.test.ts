import { describe, expect, test } from 'vitest';
import { evenRegion } from '../../../../src/site/plan/browser/even-region.ts';

const PLACE = { left: 0, top: 0, width: 60, height: 60 };
const map = (rows: number[][]) => ({
  values: Float64Array.from(rows.flat()),
  columns: rows[0]?.length ?? 0,
  rows: rows.length,
});
const pieces = (d: string) =>
  [...d.matchAll(/M([^MZ]+)/g)].map((it) => (it[1] ?? '').split('L').map((xy) => xy.split(' ').map(Number)));
/** Of the polygons, by the shoelace formula. */
const areaOf = (d: string) =>
  pieces(d)
    .map((corners) =>
      Math.abs(
        corners.reduce((sum, [x = 0, y = 0], i) => {
          const [nextX = 0, nextY = 0] = corners[(i + 1) % corners.length] ?? [];
          return sum + (x * nextY - nextX * y) / 2;
        }, 0),
      ),
    )
    .reduce((sum, it) => sum + it, 0);

describe('the evenly lit region', () => {
  test('is all of the map, without an edge, where all of it has the level', () => {
    const region = evenRegion(
      map([
        [3, 3],
        [3, 3],
      ]),
      3,
      PLACE,
    );
    expect(areaOf(region.area)).toBeCloseTo(3600);
    expect(region.edge).toBe('');
  });

  test('is nothing where nothing has it', () => {
    expect(
      evenRegion(
        map([
          [1, 1],
          [1, 1],
        ]),
        3,
        PLACE,
      ),
    ).toEqual({ area: '', edge: '' });
  });

  test('ends between two middles, by how far each is from the level', () => {
    const region = evenRegion(
      map([
        [4, 0],
        [4, 0],
      ]),
      3,
      PLACE,
    );
    // Middles at 15 and 45: the level lies a quarter of the way from the first.
    expect(areaOf(region.area)).toBeCloseTo(22.5 * 60);
    const xs = pieces(region.edge)
      .flat()
      .map(([x]) => x);
    expect(new Set(xs)).toEqual(new Set([22.5]));
    expect(
      pieces(region.edge)
        .flat()
        .map(([, y = 0]) => y)
        .sort((a, b) => a - b),
    ).toEqual([0, 15, 15, 45, 45, 60]);
  });

  test('has a hole where the middle is weak, and a piece for each side', () => {
    const ring = evenRegion(
      map([
        [5, 5, 5],
        [5, 1, 5],
        [5, 5, 5],
      ]),
      3,
      PLACE,
    );
    // Half of the way to each of the four neighbours: a rhombus, whose diagonals are a cell long.
    expect(areaOf(ring.area)).toBeCloseTo(3600 - 20 ** 2 / 2);
    expect(pieces(ring.edge)).toHaveLength(4);
    expect(pieces(evenRegion(map([[5, 1, 5]]), 3, PLACE).edge).length).toBeGreaterThan(3);
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gridGeometry } from '../../../src/measure/irradiance/grid-geometry.ts';
import { RUNS } from '../make.ts';

describe('the geometry of a grid', () => {
  test('outer points lie inside the edges, and cells meet half-way between neighbours', () => {
    const it = gridGeometry(3, 3, 30, 60, 2.54);
    expect(it?.x).toEqual([2.54, 15, expect.closeTo(27.46, 10)]);
    expect(it?.y).toEqual([2.54, 30, expect.closeTo(57.46, 10)]);
    const across = [8.77 / 30, 12.46 / 30, 8.77 / 30];
    const down = [16.27 / 60, 27.46 / 60, 16.27 / 60];
    down.forEach((dy, row) => {
      across.forEach((dx, column) => {
        expect(it?.shares[row]?.[column]).toBeCloseTo(dx * dy, 12);
      });
    });
  });

  test('a single row or column lies in the middle, however large the inset', () => {
    expect(gridGeometry(1, 1, 30, 60, 40)).toEqual({ x: [15], y: [30], shares: [[1]] });
    const strip = gridGeometry(3, 1, 30, 2, 2.54);
    expect(strip?.y).toEqual([1]);
    expect(strip?.shares).toHaveLength(1);
  });

  test('points that would coincide or cross give no geometry', () => {
    expect(gridGeometry(3, 3, 30, 60, 14.99)).toBeDefined();
    expect(gridGeometry(3, 3, 30, 60, 15)).toBeUndefined();
    expect(gridGeometry(3, 3, 60, 30, 15)).toBeUndefined();
    expect(gridGeometry(3, 3, 4, 60, 2.54)).toBeUndefined();
  });

  test('shares sum to 1, and points lie in order within the field', () => {
    const count = fc.integer({ min: 1, max: 9 });
    const side = fc.double({ min: 5, max: 200, noNaN: true });
    fc.assert(
      fc.property(
        count,
        count,
        side,
        side,
        fc.double({ min: 0, max: 2.4, noNaN: true }),
        (columns, rows, w, h, inset) => {
          const it = gridGeometry(columns, rows, w, h, inset);
          if (!it) throw new Error('a field of 5 cm has room for an inset of 2.4 cm');
          const shares = it.shares.flat();
          expect(shares).toHaveLength(columns * rows);
          expect(shares.every((share) => share > 0)).toBe(true);
          expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 10);
          for (const [at, size] of [
            [it.x, w],
            [it.y, h],
          ] as const) {
            expect(at.toSorted((a, b) => a - b)).toEqual(at);
            expect(at[0]).toBeGreaterThanOrEqual(0);
            expect(at.at(-1)).toBeLessThanOrEqual(size * (1 + 1e-12));
          }
        },
      ),
      RUNS,
    );
  });
});

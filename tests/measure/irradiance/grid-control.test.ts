import { describe, expect, test } from 'vitest';
import { gridControl } from '../../../src/measure/irradiance/grid-control.ts';

describe('the control of a grid', () => {
  test('of a product of rows and columns has nothing odd, each point likely as it is, limits a tenth either way', () => {
    const points = [2, 3, 2].flatMap((row) => [10, 14, 10].map((column) => row * column));
    for (const it of gridControl(points, 3)) {
      expect(it.likely).toBeCloseTo(it.value, 9);
      expect(it.limits[0]).toBeCloseTo(0.9 * it.value, 9);
      expect(it.limits[1]).toBeCloseTo(1.1 * it.value, 9);
      expect(it.isOdd).toBe(false);
    }
  });

  test('a point is odd where it lies beyond its limits, and nowhere else', () => {
    const points = [20, 28.1, 20.2, 30.1, 60, 29.8, 19.9, 28, 20];
    const control = gridControl(points, 3);
    expect(control.map(({ isOdd }) => isOdd)).toEqual(points.map((it) => it === 60));
    for (const { value, limits, isOdd } of control) expect(value < limits[0] || value > limits[1]).toBe(isOdd);
    expect(control[4]?.likely).toBeCloseTo((30 * 28) / 20, 0);
  });

  test('points without a reading are passed over; of four there is no spread', () => {
    expect(gridControl([20, null, 20, 30, 42, 30, 20, 28, 20], 3).map((it) => it.index)).toEqual([
      0, 2, 3, 4, 5, 6, 7, 8,
    ]);
    expect(gridControl([20, 21, 20, 22], 2)).toEqual([]);
  });
});

import { describe, expect, test } from 'vitest';
import { OUTLIER_Z } from '../../../src/measure/methods.ts';
import { gridOutlier } from '../../../src/measure/plausibility/grid-outlier.ts';
import { facts } from './facts.ts';

const flags = (gridPoints: Array<number | null>, gridColumns = 3) =>
  gridOutlier.run(facts({ gridPoints, gridColumns }));

describe('a grid point', () => {
  test('far above or below the rest is doubtful', () => {
    const hot = [78, 80, 79, 81, 140, 82, 77, 80, 78];
    expect(flags(hot)).toMatchObject([{ severity: 'doubt', concerns: ['mean-irradiance'] }]);
    expect(flags(hot)[0]?.text).toContain('Grid point 2 of row 2, 140 mW/cm²');
    const dead = [78, 80, 79, 81, 80, 82, 77, 5, 78];
    expect(flags(dead)[0]?.text).toContain('Grid point 2 of row 3, 5 mW/cm²');
    expect(flags(dead)[0]?.text).toMatch(/modified z-score -/);
  });

  test('of an even grid is nothing odd', () => {
    expect(flags([80, 80, 80, 80, 80, 80, 80, 80, 80])).toEqual([]);
    expect(flags([78, 80, 79, 81, 84, 82, 77, 80, 78])).toEqual([]);
  });

  test('is odd beyond a modified z-score of 3.5, not at it', () => {
    expect(OUTLIER_Z).toBe(3.5);
    // Median 0 and MAD 0.6745, so that the score of the last point is its value.
    const at = (z: number) => [-0.6745, -0.6745, 0, 0.6745, z];
    expect(flags(at(3.5), 5)).toEqual([]);
    expect(flags(at(3.5001), 5)).toHaveLength(1);
    expect(flags(at(3.4999), 5)).toEqual([]);
    const below = (z: number) => [0.6745, 0.6745, 0, -0.6745, -z];
    expect(flags(below(3.5), 5)).toEqual([]);
    expect(flags(below(3.5001), 5)).toHaveLength(1);
  });

  test('is found where most of the others are equal', () => {
    expect(flags([80, 80, 80, 80, 80, 80, 80, 80, 90])).toHaveLength(1);
  });

  test('keeps its place where another one was struck out', () => {
    expect(flags([null, 80, 79, 81, 80, 140, 77, 80, 78])[0]?.text).toContain('Grid point 3 of row 2');
    expect(flags([78, 80, 79, 81, 140, 82, 77, 80], 4)[0]?.text).toContain('Grid point 1 of row 2');
  });

  test('needs four others to stand out from', () => {
    expect(flags([10, 11, 12, 500])).toEqual([]);
    expect(flags([10, 11, 12, 500, null])).toEqual([]);
    expect(flags([10, 11, 12, 11, 500])).toHaveLength(1);
    expect(flags([])).toEqual([]);
  });

  test('raises a flag for each that stands out', () => {
    expect(flags([78, 80, 79, 81, 240, 82, 77, 5, 78])).toHaveLength(2);
  });
});

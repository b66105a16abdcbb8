import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gridOutlier } from '../../../src/measure/checks/grid-outlier.ts';
import { OUTLIER_Z, SMALLEST_OUTLIER } from '../../../src/measure/thresholds.ts';
import { HOT_MIDDLE } from '../../references/grid.ts';
import { RUNS } from '../make.ts';
import { facts } from './facts.ts';

const flags = (gridPoints: Array<number | null>, gridColumns = 3) =>
  gridOutlier.run(facts({ gridPoints, gridColumns }));

/** Column and row, from 1, of each point that is flagged. */
const places = (points: Array<number | null>, columns?: number) =>
  flags(points, columns).map(({ finding, at }) => {
    if (typeof finding === 'string' || finding.code !== 'grid-point-outlier') throw new Error('another finding');
    expect(at).toEqual(['session', 'grid', 'rows', finding.row - 1, finding.column - 1]);
    return [finding.column, finding.row];
  });

/** A field that falls off towards its edges as a product of rows and columns, read by a hand that is off by 1 %. */
const BELL = [48, 61, 49, 63, 80, 62, 50, 61, 48];
const belled = (index: number, value: number | null) => BELL.with(index, value as number) as Array<number | null>;

describe('a grid point', () => {
  test('far above or below what its row and column make likely is doubtful', () => {
    expect(flags(belled(4, 120))).toMatchObject([{ severity: 'doubt', concerns: ['mean-irradiance'] }]);
    expect(flags(belled(4, 120))[0]?.finding).toMatchObject({ column: 2, row: 2, value: 120, limit: OUTLIER_Z });
    expect(flags(belled(7, 5))[0]?.finding).toMatchObject({ column: 2, row: 3, value: 5 });
    expect(flags(belled(0, 80))).toHaveLength(1);
    expect(flags(belled(0, 20))).toHaveLength(1);
  });

  test('says what would be likely there', () => {
    // 61 × 50 / 48.5 or so: the fall-off of the neighbours.
    const [flag] = flags(belled(8, 20));
    expect(flag?.finding).toMatchObject({ code: 'grid-point-outlier', likely: expect.closeTo(48.3, 0) });
  });

  test('of an even grid is nothing odd', () => {
    expect(flags([80, 80, 80, 80, 80, 80, 80, 80, 80])).toEqual([]);
    expect(flags([78, 80, 79, 81, 84, 82, 77, 80, 78])).toEqual([]);
  });

  test('of a field with a bright middle is nothing odd', () => {
    expect(flags(BELL)).toEqual([]);
  });

  test('of a middle that is brighter than its row and column make likely is odd', () => {
    // 100 × 100 / 80 = 125.
    expect(flags(HOT_MIDDLE.flat())).toHaveLength(1);
    expect(flags(HOT_MIDDLE.flat())[0]?.finding).toMatchObject({ value: 140, likely: expect.closeTo(125, 9) });
  });

  test('of any field that is a product of rows and columns is nothing odd', () => {
    const effects = fc.array(fc.double({ min: 0.2, max: 1, noNaN: true }), { minLength: 3, maxLength: 4 });
    fc.assert(
      fc.property(effects, effects, (rows, columns) => {
        const points = rows.flatMap((a) => columns.map((b) => 100 * a * b));
        expect(flags(points, columns.length)).toEqual([]);
      }),
      RUNS,
    );
  });

  test('is found in such a field when it alone is a fifth off or more, wherever it lies', () => {
    const effects = fc.array(fc.double({ min: 0.4, max: 1, noNaN: true }), { minLength: 3, maxLength: 3 });
    const off = fc.oneof(fc.double({ min: 1.2, max: 5, noNaN: true }), fc.double({ min: 0.1, max: 0.8, noNaN: true }));
    fc.assert(
      fc.property(effects, effects, fc.nat(8), off, (rows, columns, index, factor) => {
        const points = rows.flatMap((a) => columns.map((b) => 100 * a * b));
        points[index] = (points[index] as number) * factor;
        expect(places(points)).toEqual([[(index % 3) + 1, Math.floor(index / 3) + 1]]);
      }),
      RUNS,
    );
  });

  test('is odd beyond a modified z-score of 3.5', () => {
    expect(OUTLIER_Z).toBe(3.5);
    // One row, logarithms with a median of 0 and a MAD of 0.06745: the score of the last point is ten times its own.
    const at = (z: number) => [-0.06745, -0.06745, 0, 0.06745, z / 10].map((it) => 80 * Math.exp(it));
    expect(flags(at(3.499), 5)).toEqual([]);
    expect(flags(at(3.501), 5)).toHaveLength(1);
    const below = (z: number) => at(z).map((value) => 6400 / value);
    expect(flags(below(3.499), 5)).toEqual([]);
    expect(flags(below(3.501), 5)).toHaveLength(1);
  });

  test('is not odd where it lies less than a tenth from what is likely, however even the rest', () => {
    expect(SMALLEST_OUTLIER).toBe(0.1);
    const row = (last: number) => [79.9, 80, 80, 80, 80.1, 80, last];
    expect(flags(row(87.9), 7)).toEqual([]);
    expect(flags(row(88.1), 7)).toHaveLength(1);
    expect(flags(row(72.1), 7)).toEqual([]);
    expect(flags(row(71.9), 7)).toHaveLength(1);
  });

  test('is found where the others are equal', () => {
    expect(flags([80, 80, 80, 80, 80, 80, 80, 80, 90])).toHaveLength(1);
  });

  test('keeps its place where another one was struck out', () => {
    const struck: Array<number | null> = belled(5, 140).with(0, null);
    expect(places(struck)).toEqual([[3, 2]]);
    const wide = [48, 61, 60, 49, 63, 80, 79, 62, 50, 20, 62, 48];
    expect(places(wide, 4)).toEqual([[2, 3]]);
  });

  test('of two rows is flagged alone, without its sound neighbour', () => {
    expect(places([78, 80, 79, 81, 140, 82, 77, 80], 4)).toEqual([[1, 2]]);
  });

  test('needs four others to stand out from', () => {
    expect(flags([10, 11, 10, 500], 4)).toEqual([]);
    expect(flags([10, 11, 10, 500, null], 5)).toEqual([]);
    expect(flags([10, 11, 10, 11, 500], 5)).toHaveLength(1);
    expect(flags([])).toEqual([]);
  });

  test('raises a flag for each that stands out', () => {
    const two = [78, 80, 79, 77, 81, 84, 82, 80, 80, 240, 79, 82, 78, 80, 5, 79];
    expect(flags(two, 4)).toHaveLength(2);
  });
});

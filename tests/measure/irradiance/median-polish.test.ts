import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { medianPolish } from '../../../src/measure/irradiance/median-polish.ts';
import { expectToMeet } from '../../references/check-value.ts';
import { POLISHED } from '../../references/median-polish.ts';
import { RUNS } from '../make.ts';

const numbers = (length: number) =>
  fc.array(fc.integer({ min: -100, max: 100 }), { minLength: length, maxLength: length });

/** A table that is nothing but row and column effects. */
const additive = fc
  .tuple(fc.integer({ min: 3, max: 5 }), fc.integer({ min: 3, max: 5 }))
  .chain(([rows, columns]) => fc.tuple(numbers(rows), numbers(columns)))
  .map(([rows, columns]) => rows.map((a) => columns.map((b) => a + b)));

describe('median polish', () => {
  test.each(POLISHED.map((row) => [row.label, row] as const))('%s', (_, row) => {
    const { table, row: i, column: j } = row.arguments;
    expectToMeet(medianPolish(table)[i]?.[j] ?? Number.NaN, row);
  });

  test('leaves nothing of rows and columns that add up', () => {
    fc.assert(
      fc.property(additive, (table) => {
        for (const residual of medianPolish(table).flat()) expect(residual).toBeCloseTo(0, 9);
      }),
      RUNS,
    );
  });

  test('leaves one odd value where it is, and its neighbours alone', () => {
    const spiked = additive.chain((table) =>
      fc.tuple(
        fc.constant(table),
        fc.nat(table.length - 1),
        fc.nat((table[0]?.length ?? 1) - 1),
        fc.integer({ min: -1000, max: 1000 }),
      ),
    );
    fc.assert(
      fc.property(spiked, ([table, row, column, by]) => {
        const odd = table.map((values, i) =>
          values.map((value, j) => (i === row && j === column ? value + by : value)),
        );
        medianPolish(odd).forEach((residuals, i) => {
          residuals.forEach((residual, j) => {
            expect(residual).toBeCloseTo(i === row && j === column ? by : 0, 9);
          });
        });
      }),
      RUNS,
    );
  });

  test('ends with rows and columns whose medians are next to nothing, or after its last sweep', () => {
    const residuals = medianPolish([
      [1, 5, 9],
      [2, 4, 7],
      [8, 3, 6],
    ]);
    for (const row of residuals) expect(row.toSorted((a, b) => (a ?? 0) - (b ?? 0))[1]).toBeCloseTo(0, 9);
  });

  test('keeps missing values missing and does not count them', () => {
    const residuals = medianPolish([
      [1, null, 3],
      [2, 3, 4],
      [3, 4, 25],
    ]);
    expect(residuals[0]?.[1]).toBeNull();
    expect(residuals[2]?.[2]).toBeCloseTo(20, 9);
    expect(
      medianPolish([
        [null, null],
        [1, 1],
      ])[0],
    ).toEqual([null, null]);
  });

  test('of nothing is nothing', () => {
    expect(medianPolish([])).toEqual([]);
    expect(medianPolish([[7]])).toEqual([[0]]);
  });

  test('leaves its input as it is', () => {
    const table = [
      [1, 2],
      [3, 5],
    ];
    medianPolish(table);
    expect(table).toEqual([
      [1, 2],
      [3, 5],
    ]);
  });
});

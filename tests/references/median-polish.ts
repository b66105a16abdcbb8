import type { CheckValue } from './check-value.ts';

/** A table and one cell of it, whose residual is looked for. */
export interface Cell {
  table: ReadonlyArray<readonly number[]>;
  row: number;
  column: number;
}

// Counts in three age groups over five years: McNeil 1977, Interactive Data Analysis (from memory).
const FIVE_YEARS = [
  [14, 15, 14],
  [7, 4, 7],
  [8, 2, 10],
  [15, 9, 10],
  [0, 2, 0],
];
// One value far off, and an even number of columns.
const ONE_FAR_OFF = [
  [13, 16, 12, 20],
  [9, 30, 11, 15],
  [14, 18, 13, 22],
];

const cell = (
  label: string,
  table: Cell['table'],
  row: number,
  column: number,
  expected: number,
): CheckValue<Cell> => ({
  label: `${label}, row ${row + 1}, column ${column + 1}`,
  arguments: { table, row, column },
  expected,
  tolerance: 1e-12,
  because: 'rounding of a few additions',
  source:
    'Tukey 1977, Exploratory Data Analysis (method from memory); repeated in another program with exact fractions',
  verified: 'computed',
});

/** Residuals after rows and columns have been polished in turn until they settle, rows first. */
export const POLISHED: readonly CheckValue<Cell>[] = [
  cell('five years', FIVE_YEARS, 0, 1, 2),
  cell('five years', FIVE_YEARS, 1, 0, 0),
  cell('five years', FIVE_YEARS, 1, 1, -2),
  cell('five years', FIVE_YEARS, 2, 1, -5),
  cell('five years', FIVE_YEARS, 2, 2, 2),
  cell('five years', FIVE_YEARS, 3, 0, 5),
  cell('five years', FIVE_YEARS, 4, 1, 3),
  cell('one far off', ONE_FAR_OFF, 0, 0, 0.5),
  cell('one far off', ONE_FAR_OFF, 1, 0, -1.25),
  cell('one far off', ONE_FAR_OFF, 1, 1, 15.75),
  cell('one far off', ONE_FAR_OFF, 1, 3, -2.75),
  cell('one far off', ONE_FAR_OFF, 2, 2, -0.5),
];

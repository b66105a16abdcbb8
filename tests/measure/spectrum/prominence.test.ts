import { expect, test } from 'vitest';
import { summitsOf } from '../../../src/measure/spectrum/prominence.ts';

/* Places and prominences as scipy.signal.find_peaks 1.17 gives them for the same row. */
const ROW = [
  8, 8, 17, 18, 7, 5, 1, 2, 10, 1, 12, 19, 18, 7, 15, 8, 13, 12, 1, 16, 11, 5, 11, 16, 1, 16, 12, 4, 1, 14, 3, 10, 16,
  11, 14, 2, 3, 3, 6, 19, 12, 13, 5, 2, 17, 12, 15, 12, 13, 1, 4, 13, 5, 9, 7, 10, 18, 10, 10, 15,
];
const PLACES = [3, 8, 11, 14, 16, 19, 23, 25, 29, 32, 34, 39, 41, 44, 46, 48, 51, 53, 56];
const PROMINENCES = [10, 9, 18, 8, 5, 15, 15, 15, 11, 14, 3, 18, 1, 15, 3, 1, 8, 2, 8];

test('agrees with another library', () => {
  const summits = summitsOf(ROW, 1);
  expect(summits.map((it) => it.at)).toEqual(PLACES);
  expect(summits.map((it) => it.prominence)).toEqual(PROMINENCES);
});

test('the ends of a row, and a rise to them, are no summits', () => {
  expect(summitsOf([3, 2, 1, 2, 3], 0)).toEqual([]);
  expect(summitsOf([], 0)).toEqual([]);
});

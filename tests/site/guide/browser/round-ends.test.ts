import { describe, expect, test } from 'vitest';
import { isRound, roundEnds } from '../../../../src/site/guide/browser/round-ends.ts';

describe('round ends', () => {
  test.each([
    [[32, 1190], 20, 2000],
    [[1.66, 272], 1, 500],
    [[5, 5], 2, 10],
    [[0.07, 0.31], 0.05, 0.5],
    [[20, 480], 10, 1000],
  ])('of %j are %d and %d', (values, min, max) => {
    const ends = roundEnds(values);
    expect(ends.min).toBeCloseTo(min, 12);
    expect(ends.max).toBeCloseTo(max, 12);
    for (const it of values) expect([it >= ends.min, it <= ends.max]).toEqual([true, true]);
  });
});

test('round numbers are 1, 2 and 5 times a power of ten, as a calculation leaves them', () => {
  expect([0.1, 0.2, 0.1 + 0.1, 5, 10, 2000, 1e-3].every(isRound)).toBe(true);
  expect([0.3, 0.1 + 0.2, 4, 15, 900].some(isRound)).toBe(false);
});

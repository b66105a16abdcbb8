import fc from 'fast-check';
import { expect, test } from 'vitest';
import { EN_LIMIT, enNumber } from '../../../src/measure/agreement/en-number.ts';
import { explainedBy } from '../../../src/measure/agreement/explained-by.ts';
import type { BudgetComponent } from '../../../src/measure/figure.ts';
import { seededRandom } from '../../../src/measure/random.ts';

const even = (value: number, half: number) => ({ value, interval95: [value - half, value + half] as const });

test('by its definition, (x − X) / √(U² + U²), worked by hand', () => {
  // 0.5 over √(0.3² + 0.4²) = 0.5
  expect(enNumber(even(10.5, 0.3), even(10, 0.4)).en).toBeCloseTo(1, 12);
  // −2 over √(5² + 12²) = 13
  expect(enNumber(even(98, 5), even(100, 12)).en).toBeCloseTo(-2 / 13, 12);
  expect(enNumber(even(3, 0.5), even(3, 0)).en).toBe(0);
});

test('a unit of both, and which of the two is one’s own, changes no more than the sign', () => {
  const value = fc.double({ min: -1e3, max: 1e3, noNaN: true });
  const half = fc.double({ min: 1e-3, max: 1e3, noNaN: true });
  fc.assert(
    fc.property(value, half, value, half, (a, u, b, v) => {
      const en = enNumber(even(a, u), even(b, v)).en;
      const scaled = enNumber(even(10 * a, 10 * u), even(10 * b, 10 * v)).en;
      expect(Math.abs(scaled - en)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(en)));
      expect(Math.abs(enNumber(even(b, v), even(a, u)).en + en)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(en)));
    }),
  );
});

test('of a lopsided interval the side that faces the other counts', () => {
  const own = { value: 10, interval95: [9, 14] as const };
  expect(enNumber(own, even(8, 0)).en).toBeCloseTo(2, 12);
  expect(enNumber(own, even(12, 0)).en).toBeCloseTo(-0.5, 12);
});

test('two that are right about their uncertainty are apart in 1 of 20 comparisons', () => {
  // With independent normal errors (x − X) / √(u² + u²) is normal, and the limit of 1 is 1.96 of it.
  const random = seededRandom(4711);
  const trials = 20_000;
  let apart = 0;
  for (let i = 0; i < trials; i++) {
    const [u, v] = [1, 2.5];
    const one = even(50 + u * random.normal(), 1.96 * u);
    if (Math.abs(enNumber(one, even(50 + v * random.normal(), 1.96 * v)).en) > EN_LIMIT) apart++;
  }
  // Four standard deviations of a binomial.
  expect(Math.abs(apart / trials - 0.05)).toBeLessThan(4 * Math.sqrt((0.05 * 0.95) / trials));
});

test('an error that both share makes it too small, as its page says', () => {
  const random = seededRandom(99);
  let apart = 0;
  for (let i = 0; i < 5000; i++) {
    const shared = random.normal();
    const own = 50 + shared + 0.3 * random.normal();
    const other = 50 + shared + 0.3 * random.normal();
    const half = 1.96 * Math.hypot(1, 0.3);
    if (Math.abs(enNumber(even(own, half), even(other, half)).en) > EN_LIMIT) apart++;
  }
  expect(apart).toBeLessThan(5);
});

test('exact values and values outside their interval are refused', () => {
  expect(() => enNumber(even(1, 0), even(2, 0))).toThrow(RangeError);
  expect(() => enNumber({ value: 5, interval95: [6, 7] }, even(2, 1))).toThrow(RangeError);
});

test('what explains a difference is the largest component, by how many of its own uncertainties', () => {
  const component = (key: string, contribution: number) =>
    ({ source: { key }, contribution }) as unknown as BudgetComponent;
  const budget = [component('resolution', 0.1), component('calibration', -2), component('distance', 0.7)];
  expect(explainedBy(budget, 5)).toMatchObject({ component: { source: { key: 'calibration' } }, times: 2.5 });
  expect(explainedBy([], 5)).toBeUndefined();
  expect(explainedBy([component('none', 0)], 5)).toBeUndefined();
});

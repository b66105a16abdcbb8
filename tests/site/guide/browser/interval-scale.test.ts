import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  LENGTH,
  placedOn,
  placeOn,
  type Scale,
  scaleOf,
  ticksOf,
} from '../../../../src/site/guide/browser/interval-scale.ts';

const RUNS = { numRuns: 300 };
const interval = fc
  .tuple(fc.double({ min: 0.01, max: 1000, noNaN: true }), fc.double({ min: 1, max: 10, noNaN: true }))
  .map(([low, ratio]) => [low, low * ratio] as const);

test('holds every interval, in order; equal ratios are equal lengths', () => {
  fc.assert(
    fc.property(fc.array(interval, { minLength: 1, maxLength: 12 }), (all) => {
      const scale = scaleOf(all) as Scale;
      for (const [low, high] of all) {
        const it = placedOn(scale, Math.sqrt(low * high), [low, high]);
        if (!it) throw new Error('an interval is off the scale');
        expect(0 <= it.from && it.from <= it.at && it.at <= it.to && it.to <= LENGTH).toBe(true);
        // The value in the middle by ratio lies in the middle, but for the rounding.
        expect(Math.abs(it.at - (it.from + it.to) / 2)).toBeLessThanOrEqual(1);
      }
    }),
    RUNS,
  );
});

test('what reaches past an end is not drawn: it would look shorter than it is', () => {
  expect(placeOn([1, 10], 11)).toBeUndefined();
  expect(placedOn([1, 10], 9, [8, 11])).toBeUndefined();
  expect(placedOn([1, 10], Math.sqrt(10), [1, 10])).toEqual({ from: 0, at: LENGTH / 2, to: LENGTH });
});

test('there is none without intervals above nought', () => {
  expect(scaleOf([])).toBeUndefined();
  expect(scaleOf([[0, 5]])).toBeUndefined();
});

test('names round numbers that do not run into each other', () => {
  expect(ticksOf([3.7, 20.3]).map((it) => it.value)).toEqual([5, 10, 20]);
  fc.assert(
    fc.property(fc.array(interval, { minLength: 1, maxLength: 12 }), (all) => {
      const ticks = ticksOf(scaleOf(all) as Scale);
      expect(ticks.length).toBeGreaterThan(0);
      ticks.slice(1).forEach((it, i) => {
        expect(it.at - (ticks[i]?.at ?? 0)).toBeGreaterThanOrEqual(LENGTH / 6);
      });
    }),
    RUNS,
  );
});

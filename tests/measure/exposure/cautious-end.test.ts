import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cautiousEnd, roundedTo } from '../../../src/measure/exposure/cautious-end.ts';
import { relation } from '../../../src/measure/exposure/made-of.ts';
import { figure, line, RUNS, vague } from '../make.ts';

const bounded = (value: number, bound: 'below' | 'above') => ({
  ...vague(value, 'a bound'),
  unit: '%' as const,
  bound,
});

describe('the cautious end', () => {
  test('is that end of the interval', () => {
    const it = figure(50, [line('sensor', 5)], 'x', '%');
    expect(cautiousEnd(it, 'high')).toBeCloseTo(50 + 1.959964 * 5, 5);
    expect(cautiousEnd(it, 'low')).toBeCloseTo(50 - 1.959964 * 5, 5);
  });

  test('is the value where its uncertainty is not known, and the bound of a bound', () => {
    expect(cautiousEnd(vague(50), 'high')).toBe(50);
    expect(cautiousEnd(bounded(50, 'below'), 'high')).toBe(50);
    expect(cautiousEnd(bounded(50, 'above'), 'low')).toBe(50);
  });

  test('is not known beyond a bound', () => {
    expect(cautiousEnd(bounded(50, 'above'), 'high')).toBeUndefined();
    expect(cautiousEnd(bounded(50, 'below'), 'low')).toBeUndefined();
  });

  test('is never milder than the value, rounded or not', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-6, max: 1e6, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (value, relative) => {
          const it = figure(value, [line('sensor', value * relative)], 'x', '%');
          const [high, low] = [cautiousEnd(it, 'high') ?? 0, cautiousEnd(it, 'low') ?? 0];
          expect(high).toBeGreaterThanOrEqual(value);
          expect(low).toBeLessThanOrEqual(value);
          // As printed: neither end is rounded to the mild side of what is printed of the value.
          const printed = Number(value.toPrecision(3));
          expect(roundedTo(high, 'high')).toBeGreaterThanOrEqual(printed);
          expect(roundedTo(low, 'low')).toBeLessThanOrEqual(printed);
        },
      ),
      RUNS,
    );
  });
});

test('numbers are rounded away from the mild side', () => {
  expect(roundedTo(47.1733, 'low')).toBe(47.1);
  expect(roundedTo(47.1033, 'high')).toBe(47.2);
  expect(roundedTo(42.1, 'high')).toBe(42.1);
  expect(roundedTo(42.1, 'low')).toBe(42.1);
  expect(roundedTo(999.5, 'high')).toBe(1000);
  expect(roundedTo(0, 'high')).toBe(0);
  expect(roundedTo(-5.678, 'high')).toBe(-5.67);
  expect(roundedTo(Number.POSITIVE_INFINITY, 'low')).toBe(Number.POSITIVE_INFINITY);
});

test('relations', () => {
  expect([undefined, 'below' as const, 'above' as const].map(relation)).toEqual(['=', '<', '>']);
});

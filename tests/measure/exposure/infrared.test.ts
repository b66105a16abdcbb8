import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { infraredLimit, JOIN, LONG_EXPOSURE, longestExposureTime } from '../../../src/measure/exposure/infrared.ts';
import { expectToMeet } from '../../references/check-value.ts';
import { INFRARED_LIMITS, INFRARED_TIMES } from '../../references/exposure.ts';
import { RUNS } from '../make.ts';

describe('the infrared limit', () => {
  test.each(INFRARED_LIMITS.map((row) => [row.label, row] as const))('for %s', (_, row) => {
    expectToMeet(infraredLimit(row.arguments), row);
  });

  test('falls as the time grows, and never below that for long exposures', () => {
    const seconds = fc.double({ min: 0.001, max: 1e5, noNaN: true });
    fc.assert(
      fc.property(seconds, seconds, (a, b) => {
        const [shorter, longer] = a < b ? [a, b] : [b, a];
        expect(infraredLimit(longer)).toBeLessThanOrEqual(infraredLimit(shorter));
        expect(infraredLimit(longer)).toBeGreaterThanOrEqual(LONG_EXPOSURE);
      }),
      RUNS,
    );
  });

  test.each([-1, Number.NaN, Number.NEGATIVE_INFINITY])('is refused for %s s', (seconds) => {
    expect(() => infraredLimit(seconds)).toThrow(RangeError);
  });

  test('at no time at all is without end', () => {
    expect(infraredLimit(0)).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('the time to the infrared limit', () => {
  test.each(INFRARED_TIMES.map((row) => [row.label, row] as const))('at %s', (_, row) => {
    expectToMeet(longestExposureTime(row.arguments), row);
  });

  test('is without end up to 100 W/m², and 1000 s just above', () => {
    expect([0, 50, 100].map(longestExposureTime)).toEqual(Array(3).fill(Number.POSITIVE_INFINITY));
    expect(longestExposureTime(100.0001)).toBe(1000);
    expect(longestExposureTime(JOIN)).toBe(1000);
    expect(longestExposureTime(JOIN * 1.0001)).toBeLessThan(1000);
  });

  test('undoes the limit, up to 1000 s', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 999, noNaN: true }), (seconds) => {
        expect(longestExposureTime(infraredLimit(seconds)) / seconds).toBeCloseTo(1, 9);
      }),
      RUNS,
    );
  });

  test('falls as the irradiance grows', () => {
    const irradiance = fc.double({ min: 0, max: 1e5, noNaN: true });
    fc.assert(
      fc.property(irradiance, irradiance, (a, b) => {
        expect(longestExposureTime(Math.max(a, b))).toBeLessThanOrEqual(longestExposureTime(Math.min(a, b)));
      }),
      RUNS,
    );
  });

  test.each([-0.1, Number.NaN])('is refused for %s W/m²', (irradiance) => {
    expect(() => longestExposureTime(irradiance)).toThrow(RangeError);
  });
});

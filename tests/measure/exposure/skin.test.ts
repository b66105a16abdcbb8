import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { skinResult } from '../../../src/measure/exposure/skin.ts';
import { SKIN_LIMIT_AT_END, skinLimit } from '../../../src/measure/exposure/skin-limit.ts';
import { gap } from '../../../src/measure/figure.ts';
import { expectToMeet } from '../../references/check-value.ts';
import { BURN_CURVE, SKIN_LIMITS } from '../../references/exposure.ts';
import { figure, figureOf, line, RUNS } from '../make.ts';

describe('the skin limit', () => {
  test.each(SKIN_LIMITS.map((row) => [row.label, row] as const))('for %s', (_, row) => {
    expectToMeet(Number(skinLimit(row.arguments)), row);
  });

  test('does not apply from 10 s on', () => {
    expect(typeof skinLimit(9.999)).toBe('number');
    for (const seconds of [10, 600, Number.POSITIVE_INFINITY]) {
      expect(skinLimit(seconds)).toBe('no-limit');
    }
    // 20000 x 10^0.25 = 35565.6 J/m² in 10 s.
    expect(SKIN_LIMIT_AT_END).toBeCloseTo(3556.5588, 4);
  });

  test('times the time is the limit of the radiant exposure, at any time', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 9.999, noNaN: true }), (seconds) => {
        // H(t) = 20000 t^0.25 J/m², IEC 62471:2006, 4.3.8, from secondary sources; the fourth root by two square roots.
        const radiantExposure = 20_000 * Math.sqrt(Math.sqrt(seconds));
        expect((Number(skinLimit(seconds)) * seconds) / radiantExposure).toBeCloseTo(1, 12);
      }),
      RUNS,
    );
  });

  test('lies well below what blisters skin, at every time of the burn curve', () => {
    for (const [seconds, blisters] of BURN_CURVE) {
      const limit = seconds < 10 ? Number(skinLimit(seconds)) : SKIN_LIMIT_AT_END;
      expect(limit / blisters, `${seconds} s`).toBeLessThan(0.5);
    }
    // The slip that this guards against, an exponent of -0.25, would lie above it at the end.
    expect(20_000 * 10 ** -0.25).toBeGreaterThan(9800);
  });

  test('falls as the time grows, and stays above what it comes down to', () => {
    const seconds = fc.double({ min: 0.001, max: 9.999, noNaN: true });
    fc.assert(
      fc.property(seconds, seconds, (a, b) => {
        expect(Number(skinLimit(Math.max(a, b)))).toBeLessThanOrEqual(Number(skinLimit(Math.min(a, b))));
        expect(Number(skinLimit(a))).toBeGreaterThan(SKIN_LIMIT_AT_END);
      }),
      RUNS,
    );
  });

  test.each([-1, Number.NaN])('is refused for %s s', (seconds) => {
    expect(() => skinLimit(seconds)).toThrow(RangeError);
  });
});

describe('heating of the skin', () => {
  const peak = figure(100, [line('sensor', 6)], 'peak-irradiance-combined', 'mW/cm²');

  test('is a share of the limit just under 10 s', () => {
    const result = skinResult('p/d', peak);
    const it = figureOf(result.figure);
    // 1000 W/m² of 3556.559 W/m²
    expect(it).toMatchObject({
      id: 'p/d/skin-heating-share',
      unit: '%',
      method: { id: 'skin-heating', version: 2 },
      basis: 'derived',
    });
    expect(it.value).toBeCloseTo(28.117066, 5);
    expect(it.standardUncertainty).toBeCloseTo(0.06 * 28.117066, 5);
    expect(it.calculation).toBe('s = 100 × 100 mW/cm² × 10 ÷ 3556.6 W/m² = 28.12 %');
    expect(it.unassessed.at(-1)).toEqual({ what: { code: 'light-beyond-reach' }, reason: { code: 'heat-missed' } });
    expect(result).toMatchObject({ hazard: 'skin', limit: 'skin-heating' });
  });

  test('without a peak is a gap with its reason', () => {
    const result = skinResult('p/d', gap('peak-irradiance-combined', { code: 'not-measured' }));
    expect(result.figure).toEqual(gap('skin-heating-share', { code: 'not-measured' }));
  });
});

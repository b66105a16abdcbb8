import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sentenceOf } from '../../../src/measure/exposure/limit.ts';
import { skinResult } from '../../../src/measure/exposure/skin.ts';
import { SKIN_LIMIT_AT_END, skinLimit } from '../../../src/measure/exposure/skin-limit.ts';
import { gap } from '../../../src/measure/figure.ts';
import { expectToMeet } from '../../references/check-value.ts';
import { SKIN_LIMITS } from '../../references/exposure.ts';
import { figure, figureOf, line, RUNS } from '../make.ts';

describe('the skin limit', () => {
  test.each(SKIN_LIMITS.map((row) => [row.label, row] as const))('for %s', (_, row) => {
    expectToMeet(Number(skinLimit(row.arguments)), row);
  });

  test('does not apply from 10 s on', () => {
    expect(typeof skinLimit(9.999)).toBe('number');
    for (const seconds of [10, 600, Number.POSITIVE_INFINITY]) {
      expect(skinLimit(seconds)).toEqual({
        notApplicable: 'the standard has no skin limit for exposures of 10 s and more',
      });
    }
    expect(SKIN_LIMIT_AT_END).toBeCloseTo(11_246.8265, 4);
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
    // 1000 W/m² of 11246.83 W/m²
    expect(it).toMatchObject({ id: 'p/d/skin-heating-share', unit: '%', method: 'skin-heating@1', basis: 'derived' });
    expect(it.value).toBeCloseTo(8.891397, 5);
    expect(it.standardUncertainty).toBeCloseTo(0.06 * 8.891397, 5);
    expect(it.working).toBe('s = 100 × 100 mW/cm² × 10 ÷ 11247 W/m² = 8.891 %');
    expect(sentenceOf(result)).toContain('8.89 % of the skin limit for an exposure just under 10 s');
    expect(sentenceOf(result)).toContain('For a session of minutes the limit is not applicable');
    expect(sentenceOf(result)).toContain('clause 4.3.8 (from memory)');
    expect(result.caution).toBe('skin-and-heat');
  });

  test('without a peak is a gap that still says what the limit is not for', () => {
    const result = skinResult('p/d', gap('peak-irradiance-combined', 'not measured'));
    expect(result.figure).toEqual(gap('skin-heating-share', 'not measured'));
    expect(sentenceOf(result)).toContain('not applicable');
  });
});

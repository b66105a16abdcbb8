import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { exposureTimeFigure, isUntimed, secondsAtCautiousEnd } from '../../../src/measure/exposure/exposure-time.ts';
import { longestExposureTime } from '../../../src/measure/exposure/infrared.ts';
import { isFigure } from '../../../src/measure/figure.ts';
import { verbatim } from '../../../src/measure/statement.ts';
import { makeFigure } from '../../../src/measure/uncertainty.ts';
import { figure, figureOf, identity, line, RUNS, vague } from '../make.ts';

const METRIC = 'infrared-stay-at-30-cm';
const share = (value: number, u = 0) => figure(value, u > 0 ? [line('sensor', u)] : [], 'infrared-share-at-30-cm', '%');
const exposureTime = (it: Parameters<typeof exposureTimeFigure>[2]) =>
  exposureTimeFigure('p/d', METRIC, it, 'modelled');

describe('the longest exposure time as a figure', () => {
  test('has a standard uncertainty of first order and the interval of the share, turned round', () => {
    const it = figureOf(exposureTime(share(500, 30)));
    expect(it).toMatchObject({
      id: `p/d/${METRIC}`,
      metric: METRIC,
      unit: 's',
      basis: 'modelled',
      method: { id: 'infrared-eye', version: 3 },
    });
    expect(it.value).toBeCloseTo(118.869381, 5);
    // (4/3) t u/E = 4/3 · 118.869 · 0.06
    expect(it.standardUncertainty).toBeCloseTo(9.50955, 4);
    expect(it.budget.map(({ source }) => source.key)).toEqual(['sensor']);
    expect(it.budget[0]?.contribution).toBeLessThan(0);
    const [low, high] = it.interval95 ?? [0, 0];
    expect(low).toBeCloseTo(longestExposureTime(500 + 1.959964 * 30), 4);
    expect(high).toBeCloseTo(longestExposureTime(500 - 1.959964 * 30), 4);
    expect(it.coverageFactor).toBeCloseTo((high - low) / (2 * 9.50955), 4);
    expect(it.bound).toBeUndefined();
    expect(it.calculation).toBe('t = min(1000 s, (18000 ÷ 500 W/m²)^(4/3)) = 118.9 s');
  });

  test('its slope is that of the formula', () => {
    const it = figureOf(exposureTime(share(300, 1)));
    const numeric = (longestExposureTime(300.01) - longestExposureTime(299.99)) / 0.02;
    expect(it.budget[0]?.contribution).toBeCloseTo(numeric, 6);
  });

  test('is cut at 1000 s, as are the ends of its interval', () => {
    const it = figureOf(exposureTime(share(105, 5)));
    expect(it.value).toBeCloseTo(longestExposureTime(105), 9);
    expect(it.interval95?.[1]).toBe(1000);
    expect(it.interval95?.[0]).toBeCloseTo(longestExposureTime(105 + 1.959964 * 5), 2);
  });

  test('up to 100 W/m² is above 1000 s, which stands for "not limited"', () => {
    for (const value of [0, 40, 100]) {
      const it = figureOf(exposureTime(share(value)));
      expect(it).toMatchObject({ value: 1000, bound: 'above', interval95: null, standardUncertainty: null });
      expect(it.uncertaintyAbsent).toEqual({ code: 'exposure-time-all-at-end' });
      expect(isUntimed(it)).toBe(true);
      expect(it.calculation).toEqual({ code: 'exposure-time-untimed-equation', irradiance: value });
    }
    expect(figureOf(exposureTime(share(100.5)))).toMatchObject({ value: 1000, notes: [] });
    expect(figureOf(exposureTime(share(100.5))).bound).toBeUndefined();
    expect(isUntimed(figureOf(exposureTime(share(100.5))))).toBe(false);
  });

  test('keeps its uncertainty where only a part of the interval is cut', () => {
    const it = figureOf(exposureTime(share(95, 10)));
    expect(it.bound).toBe('above');
    expect(it.standardUncertainty).toBeGreaterThan(0);
    expect(it.interval95?.[0]).toBeCloseTo(longestExposureTime(95 + 1.959964 * 10), 2);
    expect(it.interval95?.[1]).toBe(1000);
  });

  test('of a share of unknown uncertainty has none either', () => {
    expect(figureOf(exposureTime(vague(500, 'no meter')))).toMatchObject({
      standardUncertainty: null,
      interval95: null,
      uncertaintyAbsent: verbatim('no meter'),
    });
  });

  test('of a bounded share is bounded on the other side', () => {
    const bounded = (value: number, bound: 'below' | 'above') =>
      makeFigure({ ...identity('infrared-share-at-30-cm', '%'), bound }, value, {
        absent: verbatim('the reading is a bound'),
      });
    expect(figureOf(exposureTime(bounded(500, 'below')))).toMatchObject({ bound: 'above' });
    expect(figureOf(exposureTime(bounded(500, 'below'))).calculation).toMatch(/^t > min/);
    expect(figureOf(exposureTime(bounded(50, 'below')))).toMatchObject({ bound: 'above', value: 1000 });
    expect(figureOf(exposureTime(bounded(500, 'above')))).toMatchObject({ bound: 'below' });
    // Above 50 % may be anything: there is no time to give.
    const none = exposureTime(bounded(50, 'above'));
    expect(isFigure(none)).toBe(false);
    expect(none).toEqual({ gap: true, metric: METRIC, reason: { code: 'exposure-time-no-lower-end' } });
  });

  test('at the cautious end of the share: none up to the limit, not known beyond a bound', () => {
    expect(secondsAtCautiousEnd(share(500, 30))).toBeCloseTo(longestExposureTime(500 + 1.959964 * 30), 4);
    expect(secondsAtCautiousEnd(share(60, 5))).toBe(Number.POSITIVE_INFINITY);
    expect(secondsAtCautiousEnd({ ...vague(500, 'a bound'), bound: 'above' })).toBeUndefined();
    expect(secondsAtCautiousEnd({ ...vague(500, 'a bound'), bound: 'below' })).toBeCloseTo(118.869381, 5);
  });

  test('falls as the share grows, and holds its value in its interval', () => {
    const percent = fc.double({ min: 0, max: 5000, noNaN: true });
    fc.assert(
      fc.property(percent, percent, fc.double({ min: 0, max: 0.4, noNaN: true }), (a, b, relative) => {
        const [mild, strong] = a < b ? [a, b] : [b, a];
        const [first, second] = [mild, strong].map((it) => figureOf(exposureTime(share(it, it * relative))));
        expect(second?.value).toBeLessThanOrEqual(first?.value ?? 0);
        for (const it of [first, second]) {
          if (it?.interval95 === null) {
            expect(it.value).toBe(1000);
            continue;
          }
          expect(it?.interval95?.[0]).toBeLessThanOrEqual(it?.value ?? 0);
          expect(it?.interval95?.[1]).toBeGreaterThanOrEqual(it?.value ?? Number.NaN);
          expect(Number.isFinite(it?.value)).toBe(true);
          expect(it?.interval95?.[1]).toBeLessThanOrEqual(1000);
        }
      }),
      RUNS,
    );
  });
});

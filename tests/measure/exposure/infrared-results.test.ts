import { describe, expect, test } from 'vitest';
import { infraredResults, nearInfraredFromMode } from '../../../src/measure/exposure/infrared-results.ts';
import type { AxisReading } from '../../../src/measure/exposure/infrared-shares.ts';
import { gap } from '../../../src/measure/figure.ts';
import { axisReading, infraredPeak, resultOf } from '../../support/exposure-readings.ts';
import { figureOf, vague } from '../make.ts';

/** 15.24 cm ties the middle to the highest reading over the face: 50 over 40. */
const SWEEP = [axisReading(15.24, 40), axisReading(30, 24, 0.02), axisReading(60, 8)];

const results = (reading = infraredPeak(50, ['sensor', 0.05]), sweep: readonly AxisReading[] = [], distance = 15.24) =>
  infraredResults('p/d', nearInfraredFromMode(reading, distance, sweep));
const byId = (id: string, all = results()) => resultOf(all, id);

describe('infrared at the eye', () => {
  test('gives a share and a time for each distance, in order', () => {
    expect(results().map((it) => it.id)).toEqual(
      ['reading', '15-cm', '30-cm', '60-cm'].flatMap((at) => [`infrared-share-at-${at}`, `infrared-stay-at-${at}`]),
    );
    for (const { id, figure: it, hazard, limit } of results()) {
      expect(it.metric).toBe(id);
      expect(hazard).toBe(id.startsWith('infrared-stay') ? 'infrared-time' : 'infrared-share');
      expect(limit).toBe('infrared-eye');
    }
  });

  test('at the reading’s distance: 50 mW/cm² is 500 W/m², five times the limit', () => {
    const it = figureOf(byId('infrared-share-at-reading').figure);
    expect(it).toMatchObject({ value: 500, unit: '%', basis: 'derived', id: 'p/d/infrared-share-at-reading' });
    expect(it.standardUncertainty).toBeCloseTo(25, 9);
    expect(it.calculation).toBe('s = 100 × 50 mW/cm² × 10 ÷ 100 W/m² = 500 %');
    expect(it.unassessed).toEqual([{ what: { code: 'infrared-beyond-reach' }, reason: { code: 'heat-missed' } }]);
  });

  test('farther away, without a reading there, from the inverse perpendicular to the reading’s own cautious end', () => {
    const it = figureOf(byId('infrared-share-at-30-cm').figure);
    // 500 + 1.96 · 25 = 549.0; (500 - 49.0) (15.24 / 30)² = 116.4.
    expect(it).toMatchObject({ value: 549, bound: 'below', basis: 'derived', unit: '%', interval95: null });
    expect(it.uncertaintyAbsent).toEqual({ code: 'infrared-not-read-there' });
    expect(it.notes).toEqual([{ code: 'infrared-share-range', low: 116, high: 549 }]);
    expect(it.calculation).toEqual({
      code: 'infrared-share-range-equation',
      distance: 30,
      from: 15.24,
      low: 116,
      high: 549,
    });
    expect(figureOf(byId('infrared-share-at-60-cm').figure).value).toBe(549);
    expect(figureOf(byId('infrared-stay-at-30-cm').figure)).toMatchObject({ bound: 'above', basis: 'derived' });
    expect(figureOf(byId('infrared-stay-at-30-cm').figure).inputs).toEqual(['p/d/infrared-share-at-30-cm']);
  });

  test('nearer than the reading it is not known', () => {
    expect(byId('infrared-share-at-15-cm').figure).toMatchObject({
      reason: { code: 'infrared-not-known-nearer', than: 15.24 },
    });
    // Not even where the middle was read nearer: the highest there may lie well above the middle.
    const all = results(infraredPeak(50, ['sensor', 0.05]), [axisReading(10, 60), ...SWEEP]);
    expect(byId('infrared-share-at-15-cm', all).figure).toMatchObject({ gap: true });
  });

  test('at the reading’s own distance it is the reading, whatever the distance is called', () => {
    const all = results(infraredPeak(50, ['sensor', 0.05]), [], 30);
    const here = figureOf(byId('infrared-share-at-reading', all).figure);
    expect(figureOf(byId('infrared-share-at-30-cm', all).figure)).toMatchObject({
      value: here.value,
      interval95: here.interval95,
    });
    expect(byId('infrared-share-at-15-cm', all).figure).toMatchObject({ gap: true });
  });

  test('with near-infrared read there: the middle, raised to the highest; the sensor’s error is met once', () => {
    const all = results(infraredPeak(50, ['sensor', 0.05]), SWEEP);
    const it = figureOf(byId('infrared-share-at-30-cm', all).figure);
    // 24 mW/cm² · 50 / 40 · 10 = 300 %.
    expect(it.value).toBeCloseTo(300, 9);
    expect(it).toMatchObject({ basis: 'derived', id: 'p/d/infrared-share-at-30-cm' });
    expect(it.bound).toBeUndefined();
    expect(it.calculation).toBe('s = 100 × 24 mW/cm² × (50 ÷ 40) × 10 ÷ 100 W/m² = 300 %');
    expect(it.budget.find((entry) => entry.source.key === 'sensor')?.contribution).toBeCloseTo(0.05 * 300, 9);
    expect(it.budget.find((entry) => entry.source.key === 'axis-30')?.contribution).toBeCloseTo(0.02 * 300, 9);
    expect(it.unassessed.map((entry) => entry.what)).toContainEqual({ code: 'places-off-middle' });
    expect(it.inputs[0]).toBe('p/d/distances[30].nearInfrared');
  });

  test('a middle that is the highest already is not lowered', () => {
    const all = results(infraredPeak(50, ['sensor', 0.05]), [axisReading(15.24, 51), axisReading(30, 24)]);
    const it = figureOf(byId('infrared-share-at-30-cm', all).figure);
    expect(it.value).toBeCloseTo(240, 9);
    expect(it.calculation).toBe('s = 100 × 24 mW/cm² × 10 ÷ 100 W/m² = 240 %');
  });

  test('between readings the nearer one bounds it, beyond the last the last', () => {
    const all = results(infraredPeak(50, ['sensor', 0.05]), [
      axisReading(15.24, 40),
      axisReading(20, 36),
      axisReading(45, 12),
    ]);
    // 36 · 50 / 40 · 10 = 450 %, and 45 more for the sensor's 1.96 · 5 %: 494.1, rounded up.
    expect(figureOf(byId('infrared-share-at-30-cm', all).figure)).toMatchObject({ value: 495, bound: 'below' });
    // 150 % + 14.7.
    expect(figureOf(byId('infrared-share-at-60-cm', all).figure)).toMatchObject({ value: 165, bound: 'below' });
  });

  test('without one at the reading’s own distance, readings before the middle are not used', () => {
    const all = results(infraredPeak(50, ['sensor', 0.05]), [axisReading(20, 36), axisReading(30, 24)]);
    expect(figureOf(byId('infrared-share-at-30-cm', all).figure)).toMatchObject({ value: 549, bound: 'below' });
  });

  test('without a reading is all gaps', () => {
    const all = infraredResults(
      'p/d',
      nearInfraredFromMode(gap('peak-irradiance-near-infrared', { code: 'not-measured' }), 15.24, SWEEP),
    );
    expect(all.map((it) => ('gap' in it.figure ? it.figure.reason : ''))).toEqual(
      Array(8).fill({ code: 'not-measured' }),
    );
  });
});

describe('the instrument’s error for near-infrared', () => {
  test('is known where the budget holds it', () => {
    const known = infraredPeak(50, ['sensor', 0.05], ['thermopile/spectral-near-infrared', 0.01]);
    for (const it of results(known)) expect(it.isSpectralErrorKnown).toBe(true);
  });

  test.each([
    ['no component of it', infraredPeak(50, ['sensor', 0.05])],
    ['only red’s', infraredPeak(50, ['thermopile/spectral-red', 0.01])],
    ['no budget at all', { ...vague(50), unit: 'mW/cm²' as const }],
  ])('is not, where there is %s', (_, reading) => {
    for (const it of results(reading)) expect(it.isSpectralErrorKnown).toBe(false);
  });
});

describe('at the cautious end', () => {
  const seconds = (id: string, all = results()) => byId(id, all).cautiousSeconds;

  test('the time is that of the share’s high end, for share and time alike', () => {
    // 500 ± 1.96 · 25; 18000 t^-0.75 = 549.0 W/m² at 104.9 s.
    expect(seconds('infrared-share-at-reading')).toBeCloseTo(104.95, 1);
    expect(seconds('infrared-stay-at-reading')).toBe(seconds('infrared-share-at-reading'));
    expect(seconds('infrared-share-at-15-cm')).toBeUndefined();
  });

  test('of a share below the limit there is none; the cautious end decides', () => {
    expect(seconds('infrared-share-at-reading', results(infraredPeak(7.5, ['sensor', 0.05])))).toBe(
      Number.POSITIVE_INFINITY,
    );
    // 95 + 1.96 · 9.5 = 113.6 W/m², used up after 857.2 s.
    expect(seconds('infrared-share-at-reading', results(infraredPeak(9.5, ['sensor', 0.1])))).toBeCloseTo(857.2, 0);
  });

  test('bounds: the one from below is its own, the one from above has none', () => {
    const above = { ...vague(50), unit: 'mW/cm²' as const, bound: 'above' as const };
    const it = byId('infrared-share-at-reading', results(above));
    expect(figureOf(it.figure).bound).toBe('above');
    expect(it.cautiousSeconds).toBeUndefined();
    expect(byId('infrared-share-at-30-cm', results(above)).figure).toMatchObject({
      reason: { code: 'infrared-above-a-bound' },
    });
    const below = { ...above, bound: 'below' as const };
    expect(byId('infrared-share-at-30-cm', results(below)).figure).toMatchObject({ value: 500, bound: 'below' });
    expect(seconds('infrared-share-at-reading', results(below))).toBeCloseTo(118.869, 2);
    expect(figureOf(byId('infrared-share-at-reading', results(below)).figure).calculation).toMatch(/^s < 100 ×/);
  });

  test('in the step of the standard it is 1000 s', () => {
    // 95 W/m², whose interval ends at 100.7 W/m²: above the limit, below where its formula begins.
    const all = results(infraredPeak(9.5, ['sensor', 0.0306]));
    const share = figureOf(byId('infrared-share-at-reading', all).figure);
    expect(share.interval95?.[1]).toBeGreaterThan(100);
    expect(share.interval95?.[1]).toBeLessThan(101.2);
    expect(seconds('infrared-share-at-reading', all)).toBe(1000);
  });

  test('a reading of unknown uncertainty is its own', () => {
    const all = results({ ...vague(50, 'the session does not name the meter'), unit: 'mW/cm²' as const });
    expect(figureOf(byId('infrared-share-at-30-cm', all).figure)).toMatchObject({ value: 500, bound: 'below' });
    expect(seconds('infrared-share-at-reading', all)).toBeCloseTo(118.869, 2);
  });
});

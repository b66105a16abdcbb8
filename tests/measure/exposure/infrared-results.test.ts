import { describe, expect, test } from 'vitest';
import { infraredResults, nearInfraredFromMode } from '../../../src/measure/exposure/infrared-results.ts';
import type { AxisReading } from '../../../src/measure/exposure/infrared-shares.ts';
import { sentenceOf } from '../../../src/measure/exposure/limit.ts';
import { gap } from '../../../src/measure/figure.ts';
import { figure, figureOf, line, vague } from '../make.ts';

const peak = (value: number, ...keys: [string, number][]) =>
  figure(
    value,
    keys.map(([key, relative]) => line(key, relative * value)),
    'peak-irradiance-near-infrared',
    'mW/cm²',
  );

/** A reading before the middle: the sensor's error is the same one, the rest its own. */
const axis = (distance: number, value: number, own = 0): AxisReading => ({
  distance,
  irradiance: {
    ...peak(value, ['sensor', 0.05], [`axis-${distance}`, own]),
    id: `p/d/distances[${distance}].nearInfrared`,
  },
});
/** 15.24 cm ties the middle to the highest reading over the face: 50 over 40. */
const SWEEP = [axis(15.24, 40), axis(30, 24, 0.02), axis(60, 8)];

const results = (reading = peak(50, ['sensor', 0.05]), sweep: readonly AxisReading[] = [], distance = 15.24) =>
  infraredResults('p/d', nearInfraredFromMode(reading, distance, sweep));
const byId = (id: string, all = results()) => {
  const it = all.find((result) => result.id === id);
  if (!it) throw new Error(`no result ${id}`);
  return it;
};

describe('infrared at the eye', () => {
  test('gives a share and a time for each distance, in order', () => {
    expect(results().map((it) => it.id)).toEqual(
      ['reading', '15-cm', '30-cm', '60-cm'].flatMap((at) => [`infrared-share-at-${at}`, `infrared-stay-at-${at}`]),
    );
    for (const { id, figure: it, caution, limit } of results()) {
      expect(it.metric).toBe(id);
      expect(caution).toBe('eyes');
      expect(limit).toMatchObject({ year: 2006, clause: '4.3.7', standing: 'secondary' });
    }
  });

  test('at the reading’s distance: 50 mW/cm² is 500 W/m², five times the limit', () => {
    const it = figureOf(byId('infrared-share-at-reading').figure);
    expect(it).toMatchObject({ value: 500, unit: '%', basis: 'derived', id: 'p/d/infrared-share-at-reading' });
    expect(it.standardUncertainty).toBeCloseTo(25, 9);
    expect(it.calculation).toBe('s = 100 × 50 mW/cm² × 10 ÷ 100 W/m² = 500 %');
    expect(it.unassessed[0]?.what).toBe('Infrared beyond the meter’s reach');
  });

  test('farther away, without a reading there, from the inverse square to the reading’s own cautious end', () => {
    const it = figureOf(byId('infrared-share-at-30-cm').figure);
    // 500 + 1.96 · 25 = 549.0; (500 - 49.0) (15.24 / 30)² = 116.4.
    expect(it).toMatchObject({ value: 549, bound: 'below', basis: 'derived', unit: '%', interval95: null });
    expect(it.uncertaintyAbsent).toMatch(/^a range, for it was not read/);
    expect(it.notes).toEqual(['from 116 % to 549 %']);
    expect(figureOf(byId('infrared-share-at-60-cm').figure).value).toBe(549);
    expect(figureOf(byId('infrared-stay-at-30-cm').figure)).toMatchObject({ bound: 'above', basis: 'derived' });
    expect(figureOf(byId('infrared-stay-at-30-cm').figure).inputs).toEqual(['p/d/infrared-share-at-30-cm']);
  });

  test('nearer than the reading it is not known', () => {
    expect(byId('infrared-share-at-15-cm').figure).toMatchObject({
      reason: 'not known nearer than the reading at 15.24 cm; not less than there',
    });
    expect(sentenceOf(byId('infrared-share-at-15-cm'))).not.toMatch(/\d %/);
    // Not even where the middle was read nearer: the highest there may lie well above the middle.
    const all = results(peak(50, ['sensor', 0.05]), [axis(10, 60), ...SWEEP]);
    expect(byId('infrared-share-at-15-cm', all).figure).toMatchObject({ gap: true });
  });

  test('at the reading’s own distance it is the reading, whatever the distance is called', () => {
    const all = results(peak(50, ['sensor', 0.05]), [], 30);
    const here = figureOf(byId('infrared-share-at-reading', all).figure);
    expect(figureOf(byId('infrared-share-at-30-cm', all).figure)).toMatchObject({
      value: here.value,
      interval95: here.interval95,
    });
    expect(byId('infrared-share-at-15-cm', all).figure).toMatchObject({ gap: true });
  });

  test('with near-infrared read there: the middle, raised to the highest; the sensor’s error is met once', () => {
    const all = results(peak(50, ['sensor', 0.05]), SWEEP);
    const it = figureOf(byId('infrared-share-at-30-cm', all).figure);
    // 24 mW/cm² · 50 / 40 · 10 = 300 %.
    expect(it.value).toBeCloseTo(300, 9);
    expect(it).toMatchObject({ basis: 'derived', id: 'p/d/infrared-share-at-30-cm' });
    expect(it.bound).toBeUndefined();
    expect(it.calculation).toBe('s = 100 × 24 mW/cm² × (50 ÷ 40) × 10 ÷ 100 W/m² = 300 %');
    expect(it.budget.find((entry) => entry.source.key === 'sensor')?.contribution).toBeCloseTo(0.05 * 300, 9);
    expect(it.budget.find((entry) => entry.source.key === 'axis-30')?.contribution).toBeCloseTo(0.02 * 300, 9);
    expect(it.unassessed.map((entry) => entry.what)).toContain('Places off the middle');
    expect(it.inputs[0]).toBe('p/d/distances[30].nearInfrared');
  });

  test('a middle that is the highest already is not lowered', () => {
    const all = results(peak(50, ['sensor', 0.05]), [axis(15.24, 51), axis(30, 24)]);
    const it = figureOf(byId('infrared-share-at-30-cm', all).figure);
    expect(it.value).toBeCloseTo(240, 9);
    expect(it.calculation).toBe('s = 100 × 24 mW/cm² × 10 ÷ 100 W/m² = 240 %');
  });

  test('between readings the nearer one bounds it, beyond the last the last', () => {
    const all = results(peak(50, ['sensor', 0.05]), [axis(15.24, 40), axis(20, 36), axis(45, 12)]);
    // 36 · 50 / 40 · 10 = 450 %, and 45 more for the sensor's 1.96 · 5 %: 494.1, rounded up.
    expect(figureOf(byId('infrared-share-at-30-cm', all).figure)).toMatchObject({ value: 495, bound: 'below' });
    // 150 % + 14.7.
    expect(figureOf(byId('infrared-share-at-60-cm', all).figure)).toMatchObject({ value: 165, bound: 'below' });
  });

  test('without one at the reading’s own distance, readings before the middle are not used', () => {
    const all = results(peak(50, ['sensor', 0.05]), [axis(20, 36), axis(30, 24)]);
    expect(figureOf(byId('infrared-share-at-30-cm', all).figure)).toMatchObject({ value: 549, bound: 'below' });
  });

  test('without a reading is all gaps', () => {
    const all = results(gap('flicker-combined', 'not measured') as never, SWEEP);
    expect(all.map((it) => ('gap' in it.figure ? it.figure.reason : ''))).toEqual(Array(8).fill('not measured'));
  });
});

describe('the meter’s error for near-infrared', () => {
  const known = peak(50, ['sensor', 0.05], ['thermopile/spectral-near-infrared', 0.01]);
  const all = results(known);

  test('in the budget: what is counted in errs on the strict side', () => {
    for (const id of ['infrared-share-at-reading', 'infrared-stay-at-reading', 'infrared-share-at-30-cm']) {
      expect(sentenceOf(byId(id, all))).toContain('which errs on the strict side');
      expect(sentenceOf(byId(id, all))).not.toContain('the true share may be higher');
    }
  });

  test.each([
    ['no line of it', peak(50, ['sensor', 0.05])],
    ['only red’s', peak(50, ['thermopile/spectral-red', 0.01])],
    ['no budget at all', { ...vague(50), unit: 'mW/cm²' as const }],
  ])('not there (%s): nothing is called strict, and the true share may be higher', (_, reading) => {
    for (const it of results(reading)) {
      if ('gap' in it.figure) continue;
      expect(sentenceOf(it)).not.toContain('strict side');
      expect(it.outcome.join(' ')).toContain('the true share may be higher');
    }
  });
});

describe('what is said of infrared', () => {
  test('names share, cautious end, time, basis and edition', () => {
    const sentence = sentenceOf(byId('infrared-share-at-reading'));
    // Interval of 500 ± 1.96 · 25; longestStay(549.0) = 104.9 s, said as no more than that.
    expect(sentence).toContain('Looking towards the panel from 15.24 cm, near-infrared alone gives 500 % of the limit');
    expect(sentence).toContain('at the cautious end of the interval 549 %');
    expect(sentence).toContain('At the cautious end, the limit would be used up after 104 s');
    expect(sentence).toContain('all of it counted as 780–3000 nm');
    expect(sentence).toContain('IEC 62471, 2006, first edition, clause 4.3.7 (seen in secondary sources only)');
    expect(sentence).toContain('ICNIRP 2013 may weight part of the band less (from memory, unconfirmed)');
  });

  test('names both ends of a range, what they rest on, and the time at the cautious one', () => {
    const sentence = sentenceOf(byId('infrared-share-at-30-cm'));
    expect(sentence).toContain('gives somewhere from 116 % to 549 % of the limit for long exposures');
    expect(sentence).toContain('it was not read there');
    expect(sentence).toContain('used up after 104 s');
    expect(sentence).toContain('to fall no faster than from a point');
    expect(sentenceOf(byId('infrared-share-at-reading'))).not.toContain('from a point');
  });

  test('below the limit at the cautious end: says so, and names no time', () => {
    const all = results(peak(7.5, ['sensor', 0.05]), []);
    for (const at of ['reading', '60-cm']) {
      const sentence = sentenceOf(byId(`infrared-share-at-${at}`, all));
      expect(sentence).toContain('it lies no higher than the long-exposure limit');
      expect(sentence).not.toContain('used up');
    }
    expect(sentenceOf(byId('infrared-stay-at-reading', all))).toContain('at the cautious end of the interval too');
    expect(sentenceOf(byId('infrared-stay-at-60-cm', all))).toContain('limits no time, taken at the bound');
  });

  test('below the limit, but not at the cautious end: the cautious end decides', () => {
    // 95 + 1.96 · 9.5 = 113.6 W/m², used up after 857.2 s.
    const all = results(peak(9.5, ['sensor', 0.1]));
    expect(sentenceOf(byId('infrared-share-at-reading', all))).toContain('used up after 857 s');
    expect(sentenceOf(byId('infrared-stay-at-reading', all))).toContain(
      'at the cautious end of the interval the limit would be used up after 857 s (14 min 17 s)',
    );
  });

  test('says where the uncertainty is not known', () => {
    const reading = { ...vague(50, 'the session does not name the meter'), unit: 'mW/cm²' as const };
    const all = results(reading);
    expect(sentenceOf(byId('infrared-share-at-reading', all))).toContain(
      '(the value itself is used, for its uncertainty is not known: the session does not name the meter)',
    );
    expect(figureOf(byId('infrared-share-at-30-cm', all).figure)).toMatchObject({ value: 500, bound: 'below' });
    const low = results({ ...reading, value: 5 });
    expect(sentenceOf(byId('infrared-stay-at-reading', low))).toContain('for its uncertainty is not known');
  });

  test('keeps bounds', () => {
    const above = { ...vague(50), unit: 'mW/cm²' as const, bound: 'above' as const };
    const it = byId('infrared-share-at-reading', results(above));
    expect(figureOf(it.figure).bound).toBe('above');
    expect(sentenceOf(it)).toContain('above 500 % of the limit for long exposures, 100 W/m² (a bound; how far beyond');
    expect(byId('infrared-share-at-30-cm', results(above)).figure).toMatchObject({
      reason: 'near-infrared alone is only known to be above a bound',
    });
    const below = { ...above, bound: 'below' as const };
    expect(byId('infrared-share-at-30-cm', results(below)).figure).toMatchObject({ value: 500, bound: 'below' });
    expect(sentenceOf(byId('infrared-share-at-30-cm', results(below)))).toContain('from 0 % to 500 %');
    expect(sentenceOf(byId('infrared-share-at-reading', results(below)))).toContain('used up after 118 s');
    expect(figureOf(byId('infrared-share-at-reading', results(below)).figure).calculation).toMatch(/^s < 100 ×/);
  });

  test('in the step of the standard, share and time say the same of the cautious end', () => {
    // 95 W/m², whose interval ends at 100.7 W/m²: above the limit, below where its formula begins.
    const all = results(peak(9.5, ['sensor', 0.0306]));
    const share = figureOf(byId('infrared-share-at-reading', all).figure);
    expect(share.interval95?.[1]).toBeGreaterThan(100);
    expect(share.interval95?.[1]).toBeLessThan(101.2);
    expect(sentenceOf(byId('infrared-share-at-reading', all))).toContain('used up after 1000 s');
    expect(sentenceOf(byId('infrared-stay-at-reading', all))).toContain('would be used up after 1000 s');
  });
});

import { describe, expect, test } from 'vitest';
import {
  infraredResults,
  type ModelledPeaks,
  nearInfraredFromMode,
} from '../../../src/measure/exposure/infrared-results.ts';
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

const MODEL: ModelledPeaks = {
  atReading: peak(100, ['sensor', 0.05], ['beam', 0.01]),
  at: new Map([
    [15, peak(101, ['sensor', 0.05], ['beam', 0.01])],
    [30, peak(60, ['sensor', 0.05], ['beam', 0.04])],
    [60, peak(15, ['sensor', 0.05], ['beam', 0.08])],
  ]),
};

const results = (reading = peak(50, ['sensor', 0.05]), modelled: ModelledPeaks = MODEL) =>
  infraredResults('p/d', nearInfraredFromMode(reading), 15.24, modelled);
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
    expect(it.working).toBe('s = 100 × 50 mW/cm² × 10 ÷ 100 W/m² = 500 %');
    expect(it.unassessed[0]?.source).toBe('Infrared beyond the meter’s reach');
  });

  test('elsewhere by the ratio of the modelled peaks; the sensor’s error is met once', () => {
    const it = figureOf(byId('infrared-share-at-30-cm').figure);
    expect(it.value).toBeCloseTo(300, 9);
    expect(it.basis).toBe('modelled');
    expect(it.working).toBe('s = 100 × 50 mW/cm² × (60 ÷ 100) × 10 ÷ 100 W/m² = 300 %');
    const sensor = it.budget.find((entry) => entry.key === 'sensor');
    const beam = it.budget.find((entry) => entry.key === 'beam');
    expect(sensor?.contribution).toBeCloseTo(0.05 * 300, 9);
    expect(beam?.contribution).toBeCloseTo(0.03 * 300, 9);
    expect(it.unassessed.map((entry) => entry.source)).toContain('Beam of near-infrared alone');
    expect(figureOf(byId('infrared-stay-at-30-cm').figure).basis).toBe('modelled');
    expect(figureOf(byId('infrared-stay-at-30-cm').figure).inputs).toEqual(['p/d/infrared-share-at-30-cm']);
  });

  test('hands doubts about the beam on', () => {
    const flag = { check: 'beam-disagreement', severity: 'doubt' as const, text: 'Two beams, 2°.', concerns: [] };
    const at = new Map([[15, { ...peak(101), flags: [flag] }]]);
    const all = results(peak(50), { atReading: peak(100), at });
    expect(figureOf(byId('infrared-share-at-15-cm', all).figure).flags).toEqual([flag]);
    expect(figureOf(byId('infrared-stay-at-15-cm', all).figure).flags).toEqual([flag]);
    expect(byId('infrared-share-at-30-cm', all).figure).toMatchObject({
      reason: 'the beam model gives no peak at 30 cm',
    });
  });

  test('without a model has only the figures at the reading', () => {
    const all = results(peak(50), { absent: 'the beam is not known' });
    expect(all.filter((it) => !('gap' in it.figure)).map((it) => it.id)).toEqual([
      'infrared-share-at-reading',
      'infrared-stay-at-reading',
    ]);
    expect(byId('infrared-stay-at-60-cm', all).figure).toEqual(gap('infrared-stay-at-60-cm', 'the beam is not known'));
    expect(sentenceOf(byId('infrared-stay-at-60-cm', all))).toContain('can be given for 60 cm: the beam is not known.');
  });

  test('without light at the reading’s distance in the model has none elsewhere', () => {
    const all = results(peak(50), { atReading: peak(0), at: new Map([[15, peak(1)]]) });
    expect(byId('infrared-share-at-15-cm', all).figure).toMatchObject({ gap: true });
  });

  test('without a reading is all gaps', () => {
    const all = infraredResults('p/d', nearInfraredFromMode(gap('x', 'not measured')), 15.24, MODEL);
    expect(all.map((it) => ('gap' in it.figure ? it.figure.reason : ''))).toEqual(Array(8).fill('not measured'));
  });
});

describe('what is said of infrared', () => {
  test('names share, cautious end, time, basis and edition', () => {
    const sentence = sentenceOf(byId('infrared-share-at-30-cm'));
    // Interval of 300 ± 1.96 · 17.49; longestStay(334.28) = 203.3 s, said as no more than that.
    expect(sentence).toContain('Looking towards the panel from 30 cm, near-infrared alone gives 300 % of the limit');
    expect(sentence).toContain('at the cautious end of the interval 335 %');
    expect(sentence).toContain('used up after 203 s (3 min 23 s)');
    expect(sentence).toContain('all of it counted as 780–3000 nm, which errs on the strict side');
    expect(sentence).toContain('IEC 62471, 2006, first edition, clause 4.3.7 (seen in secondary sources only)');
    expect(sentence).toContain('ICNIRP 2013 may weight part of the band less (from memory, unconfirmed)');
  });

  test('below the limit at the cautious end: says so, and names no time', () => {
    const sentence = sentenceOf(byId('infrared-share-at-60-cm'));
    expect(sentence).toContain('75 % of the limit');
    expect(sentence).toContain('it lies no higher than the long-exposure limit');
    expect(sentence).not.toContain('used up');
    expect(sentenceOf(byId('infrared-stay-at-60-cm'))).toContain('at the cautious end of the interval too');
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
    const low = results({ ...reading, value: 5 });
    expect(sentenceOf(byId('infrared-stay-at-reading', low))).toContain('for its uncertainty is not known');
  });

  test('keeps bounds', () => {
    const above = { ...vague(50), unit: 'mW/cm²' as const, bound: 'above' as const };
    const it = byId('infrared-share-at-reading', results(above));
    expect(figureOf(it.figure).bound).toBe('above');
    expect(sentenceOf(it)).toContain('above 500 % of the limit for long exposures, 100 W/m² (a bound; how far beyond');
    const below = { ...above, bound: 'below' as const };
    expect(sentenceOf(byId('infrared-share-at-reading', results(below)))).toContain('used up after 118 s');
    expect(figureOf(byId('infrared-share-at-reading', results(below)).figure).working).toMatch(/^s < 100 ×/);
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

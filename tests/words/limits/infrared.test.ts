import { describe, expect, test } from 'vitest';
import { infraredResults, nearInfraredFromMode } from '../../../src/measure/exposure/infrared-results.ts';
import type { AxisReading } from '../../../src/measure/exposure/infrared-shares.ts';
import { limitWords } from '../../../src/words/limits/index.ts';
import { titleOf } from '../../../src/words/limits/wording.ts';
import { say } from '../../../src/words/say.ts';
import { figureOf, told, vague } from '../../measure/make.ts';
import { infraredPeak, resultOf } from '../../support/exposure-readings.ts';
import { sentenceOf } from '../../support/sentence-of.ts';

const results = (reading = infraredPeak(50, ['sensor', 0.05]), sweep: readonly AxisReading[] = [], distance = 15.24) =>
  infraredResults('p/d', nearInfraredFromMode(reading, distance, sweep));
const byId = (id: string, all = results()) => resultOf(all, id);

describe('the meter’s error for near-infrared', () => {
  const known = infraredPeak(50, ['sensor', 0.05], ['thermopile/spectral-near-infrared', 0.01]);
  const all = results(known);

  test('in the budget: what is counted in errs on the strict side', () => {
    for (const id of ['infrared-share-at-reading', 'infrared-stay-at-reading', 'infrared-share-at-30-cm']) {
      expect(sentenceOf(byId(id, all))).toContain('which errs on the strict side');
      expect(sentenceOf(byId(id, all))).not.toContain('the true share may be higher');
    }
  });

  test.each([
    ['no component of it', infraredPeak(50, ['sensor', 0.05])],
    ['only red’s', infraredPeak(50, ['thermopile/spectral-red', 0.01])],
    ['no budget at all', { ...vague(50), unit: 'mW/cm²' as const }],
  ])('not there (%s): nothing is called strict, and the true share may be higher', (_, reading) => {
    for (const it of results(reading)) {
      if ('gap' in it.figure) continue;
      expect(sentenceOf(it)).not.toContain('strict side');
      expect(limitWords(it).outcome.join(' ')).toContain('the true share may be higher');
    }
  });
});

describe('what is said of infrared', () => {
  test('names share, cautious end, time, basis and edition', () => {
    const sentence = sentenceOf(byId('infrared-share-at-reading'));
    // Interval of 500 ± 1.96 · 25; longestExposureTime(549.0) = 104.9 s, told as no more than that.
    expect(sentence).toContain('Looking towards the panel from 15.24 cm, near-infrared alone gives 500 % of the limit');
    expect(sentence).toContain('at the cautious end of the interval 549 %');
    expect(sentence).toContain('At the cautious end, the limit would be used up after 1 min 44 s');
    expect(sentence).toContain('all of it counted as 780–3000 nm');
    expect(sentence).toContain('IEC 62471, 2006, first edition, clause 4.3.7 (seen in secondary sources only)');
    expect(sentence).toContain('ICNIRP 2013 may weight part of the band less (from memory, unconfirmed)');
  });

  test('names both ends of a range, what they rest on, and the time at the cautious one', () => {
    const sentence = sentenceOf(byId('infrared-share-at-30-cm'));
    expect(sentence).toContain('gives somewhere from 116 % to 549 % of the limit for long exposures');
    expect(sentence).toContain('it was not read there');
    expect(sentence).toContain('used up after 1 min 44 s');
    expect(sentence).toContain('to fall no faster than from a point');
    expect(sentenceOf(byId('infrared-share-at-reading'))).not.toContain('from a point');
  });

  test('below the limit at the cautious end: says so, and names no time', () => {
    const all = results(infraredPeak(7.5, ['sensor', 0.05]), []);
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
    const all = results(infraredPeak(9.5, ['sensor', 0.1]));
    expect(sentenceOf(byId('infrared-share-at-reading', all))).toContain('used up after 14 min 17 s');
    expect(sentenceOf(byId('infrared-stay-at-reading', all))).toContain(
      'at the cautious end of the interval the limit would be used up after 14 min 17 s',
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
    expect(sentenceOf(it)).toContain('above 500 % of the limit for long exposures, 100 W/m² (a bound; how far beyond');
    expect(sentenceOf(byId('infrared-share-at-30-cm', results(above)))).toContain(
      'can be given for 30 cm: near-infrared alone is only known to be above a bound.',
    );
    const below = { ...above, bound: 'below' as const };
    expect(sentenceOf(byId('infrared-share-at-30-cm', results(below)))).toContain('from 0 % to 500 %');
    expect(sentenceOf(byId('infrared-share-at-reading', results(below)))).toContain('used up after 1 min 58 s');
  });

  test('in the step of the standard, share and time say the same of the cautious end', () => {
    // 95 W/m², whose interval ends at 100.7 W/m²: above the limit, below where its formula begins.
    const all = results(infraredPeak(9.5, ['sensor', 0.0306]));
    expect(sentenceOf(byId('infrared-share-at-reading', all))).toContain('used up after 16 min 40 s');
    expect(sentenceOf(byId('infrared-stay-at-reading', all))).toContain('would be used up after 16 min 40 s');
  });

  test('nearer than the reading it is not known, and no number stands for it', () => {
    const words = limitWords(byId('infrared-share-at-15-cm'));
    expect(words.withheld).toBe(
      'No share of the infrared limit can be given for 15 cm: not known nearer than the reading at 15.24 cm; not less than there.',
    );
    expect(words.outcome).toEqual([]);
    expect(sentenceOf(byId('infrared-share-at-15-cm'))).not.toMatch(/\d %/);
  });

  test('names both results of a distance alike', () => {
    const all = results(infraredPeak(50, ['sensor', 0.05]), [], 15.24);
    expect(titleOf(limitWords(byId('infrared-share-at-reading', all)))).toBe(
      'Infrared at the eye, 15.24 cm: share of the limit',
    );
    expect(titleOf(limitWords(byId('infrared-stay-at-reading', all)))).toBe(
      'Infrared at the eye, 15.24 cm: time to the limit',
    );
  });

  test('a range beside its figure: note, reason without an interval, equation', () => {
    const it = figureOf(byId('infrared-share-at-30-cm').figure);
    expect(it.notes.map(say)).toEqual(['from 116 % to 549 %']);
    expect(told(it.uncertaintyAbsent)).toBe('a range, for it was not read at this distance');
    expect(told(it.calculation)).toBe('s(30 cm) < s(15.24 cm) at its cautious end = 549 %; s(30 cm) > 116 %');
  });

  test('a time that is none beside its figure: note and equation', () => {
    const it = figureOf(byId('infrared-stay-at-reading', results(infraredPeak(7.5))).figure);
    expect(it.notes.map(say)).toEqual(['1000 s stands for “not limited by time in this standard”']);
    expect(told(it.calculation)).toBe('E = 75 W/m² ≤ 100 W/m²: not limited by time');
    expect(told(it.uncertaintyAbsent)).toBe('all of its interval lies at 1000 s, where the formula ends');
  });
});

import { describe, expect, test } from 'vitest';
import { flickerResults } from '../../../src/measure/exposure/flicker-results.ts';
import type { FigureOrGap } from '../../../src/measure/figure.ts';
import { limitWords } from '../../../src/words/limits/index.ts';
import { titleOf } from '../../../src/words/limits/wording.ts';
import { say } from '../../../src/words/say.ts';
import { figure, line, vague } from '../../measure/make.ts';
import { depthOf, frequencyOf, NO_FLICKER, resultOf } from '../../support/exposure-readings.ts';
import { sentenceOf } from '../../support/sentence-of.ts';

const result = (id: string, depth: FigureOrGap, frequency: FigureOrGap) =>
  resultOf(
    flickerResults('p/d', (mode) => (mode === 'red' ? NO_FLICKER : { depth, frequency })),
    id,
  );
const lowRisk = (depth: FigureOrGap, frequency: FigureOrGap) =>
  result('flicker-low-risk-multiple-combined', depth, frequency);
const sentence = (depth: FigureOrGap, frequency: FigureOrGap) => sentenceOf(lowRisk(depth, frequency));

describe('flicker beside a line', () => {
  test('names mode, depth, frequency, the line and its height', () => {
    const it = lowRisk(depthOf(8, 0.4), frequencyOf(120));
    expect(titleOf(limitWords(it))).toBe('Flicker with both channels on: multiple of the low-risk line (Practice 1)');
    // 8 / 9.6, and 0.4 · 1.96 / 9.6 more.
    expect(limitWords(it).outcome[0]).toBe(
      'The light flickers with both channels on by 8 % at 120 Hz: 0.833 times the line at that frequency, 9.6 %, at the cautious end of the interval 0.915 times.',
    );
    expect(sentenceOf(it)).toContain('it speaks of visible light only');
    const other = result('flicker-no-effect-multiple-combined', depthOf(8, 0.4), frequencyOf(120));
    expect(limitWords(other).label).toBe('multiple of the no-effect line');
  });

  test('says that nobody knows how sure the frequency is, where nobody does', () => {
    expect(sentence(depthOf(8, 0.4), frequencyOf(120))).toContain('How sure the frequency is, is not known.');
    const known = figure(120, [line('clock', 1.2)], 'flicker-frequency-combined', 'Hz');
    expect(sentence(depthOf(8), known)).not.toContain('How sure the frequency');
  });

  test('of a bound stays a bound', () => {
    const depth = { ...vague(1, 'the reading is a bound'), unit: '%' as const, bound: 'below' as const };
    expect(sentence(depth, frequencyOf(100))).toContain('by below 1 % at 100 Hz: below 0.125 times the line');
  });

  test('close above 90 Hz says what it would be below', () => {
    expect(sentence(depthOf(9), frequencyOf(91))).toContain(
      'Note: 91 Hz is close to 90 Hz, where the line steps; just below it the multiple would be 4.',
    );
    expect(sentence(depthOf(9), frequencyOf(90))).toContain('where the line steps');
    expect(sentence(depthOf(9), frequencyOf(95))).not.toContain('where the line steps');
    expect(sentence(depthOf(9), frequencyOf(89.9))).not.toContain('where the line steps');
    expect(say({ code: 'flicker-near-step', hertz: 91, multiple: 4, bound: 'below' })).toMatch(/would be below 4$/);
  });
});

describe('no multiple', () => {
  test('for near-infrared alone: the line speaks of visible light', () => {
    const it = sentenceOf(result('flicker-low-risk-multiple-near-infrared', depthOf(8), frequencyOf(120)));
    expect(it).toMatch(
      /^No multiple of the line can be given with near-infrared alone on: .*speaks of visible light\. /,
    );
    expect(it).toContain('that does not say that its flicker does nothing');
    expect(say({ code: 'flicker-lines-visible-only' })).toBe('the lines speak of visible light');
  });

  test.each([
    [depthOf(8), frequencyOf(1250.1), 'no line applies, for the standard has none above 1250 Hz'],
    [NO_FLICKER.depth, frequencyOf(100), 'flicker was not measured'],
    [depthOf(8), NO_FLICKER.frequency, 'not known, for no frequency is recorded'],
    [
      depthOf(8),
      { ...frequencyOf(100), bound: 'above' as const },
      'not known, for the frequency is only known to be beyond a bound',
    ],
    [depthOf(8), frequencyOf(0), 'not known, for without a frequency there is no line'],
  ])('case %#', (depth, frequency, reason) => {
    expect(sentence(depth, frequency)).toContain(
      `No multiple of the line can be given with both channels on: ${reason}.`,
    );
  });
});

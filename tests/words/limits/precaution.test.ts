import { expect, test } from 'vitest';
import type { FieldReading } from '../../../src/measure/exposure/field-reading.ts';
import { precautionResult } from '../../../src/measure/exposure/precaution-results.ts';
import { gap } from '../../../src/measure/figure.ts';
import { CITATIONS } from '../../../src/words/limits/citations.ts';
import { figure, line, vague } from '../../measure/make.ts';
import { electric, magnetic, radio } from '../../support/exposure-readings.ts';
import { sentenceOf } from '../../support/sentence-of.ts';

const sentence = (reading: FieldReading) => sentenceOf(precautionResult('p/d', reading));
const bare = (value: number, bound?: 'below' | 'above') =>
  magnetic({ on: { ...vague(value), unit: 'µT', ...(bound && { bound }) } });

test('said to be private, for beds, of no official status, and from memory', () => {
  const text = sentence(magnetic());
  expect(text).toContain('the lowest line for sleeping places, 0.02 µT');
  expect(text).toContain('“Severe anomaly”, by the cautious end');
  expect(text).toContain('private precautionary guideline without official status, for beds at night');
  expect(text).toContain('SBM-2015 with the numbers seen for SBM-2008 (from memory)');
  expect(CITATIONS['sleeping-places'].standing).toBe('memory');
});

test('by the cautious end, where there is one', () => {
  const on = figure(0.095, [line('coil', 0.01)], 'magnetic-field-on', 'µT');
  expect(sentence(magnetic({ on }))).toContain('“Severe anomaly”');
  expect(sentence(bare(0.095))).toContain('“Slight anomaly”.');
});

test('each range has its words', () => {
  const words = [0.01, 0.05, 0.3, 1].map((value) => /“(.*?)”/.exec(sentence(bare(value)))?.[1]);
  expect(words).toEqual(['No anomaly', 'Slight anomaly', 'Severe anomaly', 'Extreme anomaly']);
});

test('a bound gives the farthest range, or the nearest', () => {
  expect(sentence(bare(0.05, 'below'))).toContain('at most “Slight anomaly”, as far as the meter sees.');
  expect(sentence(bare(0.05, 'above'))).toContain('at least “Slight anomaly”');
});

test('which line of several is meant', () => {
  expect(sentence(electric(3))).toContain('against ground potential');
  expect(sentence(radio(0.01))).toContain('for the peak of each source');
});

test('without a reading, the reason', () => {
  expect(sentence(magnetic({ on: gap('magnetic-field-on', { code: 'not-measured' }) }))).toContain(
    'for the magnetic field: not measured.',
  );
});

import { describe, expect, test } from 'vitest';
import { rangeOf } from '../../../src/measure/exposure/building-biology.ts';
import type { FieldReading } from '../../../src/measure/exposure/field-reading.ts';
import { sentenceOf } from '../../../src/measure/exposure/limit.ts';
import { precautionResult } from '../../../src/measure/exposure/precaution-results.ts';
import { gap } from '../../../src/measure/figure.ts';
import { figure, figureOf, line, vague } from '../make.ts';

describe('ranges for sleeping places', () => {
  test.each([
    ['magnetic', 0, 'No anomaly'],
    ['magnetic', 0.0199, 'No anomaly'],
    ['magnetic', 0.02, 'Slight anomaly'],
    ['magnetic', 0.0999, 'Slight anomaly'],
    ['magnetic', 0.1, 'Severe anomaly'],
    // 3 mG
    ['magnetic', 0.3, 'Severe anomaly'],
    ['magnetic', 0.499, 'Severe anomaly'],
    ['magnetic', 0.5, 'Extreme anomaly'],
    ['electric', 0.9, 'No anomaly'],
    ['electric', 1, 'Slight anomaly'],
    ['electric', 5, 'Severe anomaly'],
    ['electric', 49.9, 'Severe anomaly'],
    ['electric', 50, 'Extreme anomaly'],
    ['radio', 0.00009, 'No anomaly'],
    ['radio', 0.0001, 'Slight anomaly'],
    ['radio', 0.01, 'Severe anomaly'],
    // 100 µW/m²
    ['radio', 0.1, 'Severe anomaly'],
    ['radio', 1, 'Extreme anomaly'],
  ] as const)('%s %s: %s', (kind, value, range) => {
    expect(rangeOf(kind, value)).toBe(range);
  });

  test.each([-1, Number.NaN])('are refused for %s', (value) => {
    expect(() => rangeOf('magnetic', value)).toThrow(RangeError);
  });
});

describe('the precautionary lines', () => {
  const reading = (part: Partial<FieldReading> = {}): FieldReading => ({
    kind: 'magnetic',
    on: figure(0.31, [line('coil', 0.02)], 'magnetic-field-on', 'µT'),
    off: gap('magnetic-field-off', 'not measured'),
    distance: '15 cm',
    ...part,
  });

  test('give a multiple of the lowest one', () => {
    const it = figureOf(precautionResult('p/d', reading()).figure);
    expect(it).toMatchObject({
      id: 'p/d/magnetic-field-precaution',
      unit: '1',
      method: { id: 'building-biology', version: 1 },
    });
    expect(it.value).toBeCloseTo(15.5, 9);
    expect(it.standardUncertainty).toBeCloseTo(1, 9);
    expect(it.calculation).toBe('k = 0.31 µT (= 3.1 mG = 310 nT) ÷ 0.02 µT = 15.5');
  });

  test('are said to be private, for beds, of no official status, and from memory', () => {
    const result = precautionResult('p/d', reading());
    const { limit } = result;
    const sentence = sentenceOf(result);
    expect(sentence).toContain('“Severe anomaly”, by the cautious end');
    expect(sentence).toContain('private precautionary guideline without official status, for beds at night');
    expect(sentence).toContain('SBM-2015 with the numbers seen for SBM-2008 (from memory)');
    expect(limit?.standing).toBe('memory');
  });

  test('go by the cautious end', () => {
    const on = figure(0.095, [line('coil', 0.01)], 'magnetic-field-on', 'µT');
    expect(sentenceOf(precautionResult('p/d', reading({ on })))).toContain('“Severe anomaly”');
    expect(sentenceOf(precautionResult('p/d', reading({ on: { ...vague(0.095), unit: 'µT' } })))).toContain(
      '“Slight anomaly”;',
    );
  });

  test('a bound gives the farthest range, or the nearest', () => {
    const on = { ...vague(0.05), unit: 'µT' as const };
    expect(sentenceOf(precautionResult('p/d', reading({ on: { ...on, bound: 'below' } })))).toContain(
      'at most “Slight anomaly”, as far as the meter sees;',
    );
    expect(sentenceOf(precautionResult('p/d', reading({ on: { ...on, bound: 'above' } })))).toContain(
      'at least “Slight anomaly”',
    );
  });

  test('say which line of several is meant', () => {
    const electric = reading({ kind: 'electric', on: figure(3, [], 'electric-field-on', 'V/m') });
    expect(sentenceOf(precautionResult('p/d', electric))).toContain('against ground potential');
    expect(figureOf(precautionResult('p/d', electric).figure).value).toBe(3);
    const radio = reading({ kind: 'radio', on: figure(0.01, [], 'radio-field-on', 'mW/m²') });
    expect(sentenceOf(precautionResult('p/d', radio))).toContain('for the peak of each source');
    expect(figureOf(precautionResult('p/d', radio).figure).value).toBeCloseTo(100, 9);
  });

  test('without a reading are a gap', () => {
    const result = precautionResult('p/d', reading({ on: gap('magnetic-field-on', 'not measured') }));
    expect(result.figure).toEqual(gap('magnetic-field-precaution', 'not measured'));
    expect(sentenceOf(result)).toContain('for the magnetic field: not measured.');
  });
});

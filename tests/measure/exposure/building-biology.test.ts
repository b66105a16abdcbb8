import { describe, expect, test } from 'vitest';
import { rangeOf } from '../../../src/measure/exposure/building-biology.ts';
import type { FieldReading } from '../../../src/measure/exposure/field-reading.ts';
import { precautionResult } from '../../../src/measure/exposure/precaution-results.ts';
import { gap } from '../../../src/measure/figure.ts';
import { figure, figureOf, line, vague } from '../make.ts';

describe('ranges for sleeping places', () => {
  test.each([
    ['magnetic', 0, 'no-anomaly'],
    ['magnetic', 0.0199, 'no-anomaly'],
    ['magnetic', 0.02, 'slight'],
    ['magnetic', 0.0999, 'slight'],
    ['magnetic', 0.1, 'severe'],
    // 3 mG
    ['magnetic', 0.3, 'severe'],
    ['magnetic', 0.499, 'severe'],
    ['magnetic', 0.5, 'extreme'],
    ['electric', 0.9, 'no-anomaly'],
    ['electric', 1, 'slight'],
    ['electric', 5, 'severe'],
    ['electric', 49.9, 'severe'],
    ['electric', 50, 'extreme'],
    ['radio', 0.00009, 'no-anomaly'],
    ['radio', 0.0001, 'slight'],
    ['radio', 0.01, 'severe'],
    // 100 µW/m²
    ['radio', 0.1, 'severe'],
    ['radio', 1, 'extreme'],
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
    off: gap('magnetic-field-off', { code: 'not-measured' }),
    distance: '15 cm',
    ...part,
  });
  const bare = (value: number, bound?: 'below' | 'above'): FieldReading =>
    reading({ on: { ...vague(value), unit: 'µT', ...(bound && { bound }) } });

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

  test('are of a private guideline, which is no level for the public', () => {
    expect(precautionResult('p/d', reading())).toMatchObject({
      hazard: 'precaution',
      limit: 'sleeping-places',
      line: 0.02,
      range: 'severe',
    });
  });

  test('go by the cautious end', () => {
    const on = figure(0.095, [line('coil', 0.01)], 'magnetic-field-on', 'µT');
    expect(precautionResult('p/d', reading({ on })).range).toBe('severe');
    expect(precautionResult('p/d', bare(0.095)).range).toBe('slight');
  });

  test('a bound gives the farthest range, or the nearest', () => {
    expect(precautionResult('p/d', bare(0.05, 'below')).range).toBe('slight');
    expect(precautionResult('p/d', bare(0.05, 'above')).range).toBe('slight');
  });

  test('are those of each kind of field', () => {
    const electric = reading({ kind: 'electric', on: figure(3, [], 'electric-field-on', 'V/m') });
    expect(figureOf(precautionResult('p/d', electric).figure).value).toBe(3);
    const radio = reading({ kind: 'radio', on: figure(0.01, [], 'radio-field-on', 'mW/m²') });
    expect(figureOf(precautionResult('p/d', radio).figure).value).toBeCloseTo(100, 9);
  });

  test('without a reading are a gap', () => {
    const result = precautionResult('p/d', reading({ on: gap('magnetic-field-on', { code: 'not-measured' }) }));
    expect(result.figure).toEqual(gap('magnetic-field-precaution', { code: 'not-measured' }));
    expect(result.range).toBeUndefined();
  });
});

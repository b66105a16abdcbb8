import { describe, expect, test } from 'vitest';
import { unitSlips } from '../../../src/measure/checks/unit-slips.ts';
import type { Figure } from '../../../src/measure/figure.ts';
import { figure } from '../make.ts';
import { facts } from './facts.ts';

const flags = (values: Record<string, number>) => unitSlips.run(facts({ values }));

describe('a field reading', () => {
  test.each([
    ['magnetic-field-off', 0.4],
    ['magnetic-field-on', 20],
    ['electric-field-off', 1000],
    ['electric-field-on', 1000],
    ['radio-field-off', 10],
  ])('%s is odd above %s, not at it', (metric, most) => {
    expect(flags({ [metric]: most })).toEqual([]);
    expect(flags({ [metric]: most * 1.01 })).toMatchObject([{ severity: 'doubt', concerns: [metric] }]);
  });

  test('of 5 µT with the panel off: says what it is in the other unit, and what to write', () => {
    expect(flags({ 'magnetic-field-off': 5 })[0]?.finding).toEqual({
      code: 'field-in-smaller-unit',
      ...{ field: 'magnetic', panel: 'off', value: 5, most: 0.4, unit: 'µT', smaller: 'mG', typed: 'mG', factor: 10 },
    });
  });

  test('of radio power and of electric fields: likewise', () => {
    expect(flags({ 'radio-field-off': 15 })[0]?.finding).toMatchObject({
      ...{ field: 'radio', value: 15, unit: 'mW/m²', smaller: 'µW/m²', typed: 'uW/m2', factor: 1000 },
    });
    expect(flags({ 'electric-field-on': 1800 })[0]?.finding).toMatchObject({
      ...{ field: 'electric', panel: 'on', value: 1800, unit: 'V/m', smaller: 'mV/m', typed: 'mV/m', factor: 1000 },
    });
  });

  test('each is judged by itself; strong radio with the panel on is not', () => {
    expect(flags({ 'magnetic-field-off': 2, 'magnetic-field-on': 40 })).toHaveLength(2);
    expect(flags({ 'radio-field-on': 1000 })).toEqual([]);
  });

  test('below the meter’s reach was not as high as its number; above it was', () => {
    const bounded = (bound: 'below' | 'above') => ({
      ...facts(),
      figure: (metric: string): Figure | undefined =>
        metric === 'magnetic-field-off' ? { ...figure(5, [], metric, 'µT'), bound } : undefined,
    });
    expect(unitSlips.run(bounded('below'))).toEqual([]);
    expect(unitSlips.run(bounded('above'))).toHaveLength(1);
  });

  test('that was not taken is not judged', () => {
    expect(flags({})).toEqual([]);
  });
});

import { describe, expect, test } from 'vitest';
import { amount, asRead, hertzWords } from '../../../src/words/limits/amounts.ts';
import { outcome } from '../../../src/words/limits/outcome.ts';
import { figure, line, vague } from '../../measure/make.ts';

const bounded = (value: number, bound: 'below' | 'above') => ({
  ...vague(value, 'a bound'),
  unit: '%' as const,
  bound,
});

describe('numbers in words', () => {
  test('have their unit; a pure number is a multiple', () => {
    expect(amount(0.8333, '1')).toBe('0.833 times');
    expect(amount(0.155, '%')).toBe('0.155 %');
  });

  test('as they were read: a bound says which side', () => {
    expect(asRead(bounded(0.1, 'below'))).toBe('below 0.1 %');
    expect(asRead({ value: 0.31, unit: 'µT' })).toBe('0.31 µT');
  });

  test('frequencies are in kilohertz from 1000 Hz up', () => {
    expect([50, 999, 1000, 65_000].map(hertzWords)).toEqual(['50 Hz', '999 Hz', '1 kHz', '65 kHz']);
  });

  test('outcomes', () => {
    expect(outcome(figure(42, [line('sensor', 3)], 'x', '%'), 'high', 'of the limit')).toBe(
      '42 % of the limit, at the cautious end of the interval 47.9 %',
    );
    expect(outcome({ ...vague(42, 'no meter'), unit: '%' }, 'high', 'of the limit')).toBe(
      '42 % of the limit (the value itself is used, for its uncertainty is not known: no meter)',
    );
    expect(outcome(bounded(5, 'below'), 'high')).toBe('below 5 % (a bound, which is itself used as the cautious end)');
    expect(outcome(bounded(5, 'above'), 'high')).toBe('above 5 % (a bound; how far beyond it is not known)');
  });
});

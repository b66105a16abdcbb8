import { expect, test } from 'vitest';
import {
  costWords,
  energyWords,
  minutesWords,
  plainNumber,
  spanned,
} from '../../../../src/site/plan/browser/plan-words.ts';

test('numbers have as many digits as their size deserves', () => {
  expect([1234.5, 123.4, 12.34, 1.234, 0.1234].map(plainNumber)).toEqual(['1,235', '123', '12.3', '1.23', '0.123']);
});

test('values keep the digits that their interval leaves, or say that there is none', () => {
  expect(spanned({ value: 41.234, low: 38.9, high: 43.6 }, 'mW/cm²')).toBe('41.2 mW/cm² (38.9 to 43.6)');
  expect(spanned({ value: 41.234 }, 'mW/cm²')).toBe('41.2 mW/cm² (± not known)');
});

test('seconds are told as minutes', () => {
  expect(minutesWords({ value: 300, low: 240, high: 360 })).toBe('5.0 min (4.0 to 6.0)');
});

test('below a kilowatt-hour energy is in watt-hours', () => {
  expect(energyWords({ value: 0.0123 })).toBe('12.3 Wh (± not known)');
  expect(energyWords({ value: 1.5 })).toBe('1.50 kWh (± not known)');
});

test('cost is no finer than a hundredth of a cent', () => {
  expect(costWords({ value: 0.0123456, low: 0.0123455, high: 0.0123457 }, 'EUR')).toBe('€0.0123 (€0.0123 to €0.0123)');
  expect(costWords({ value: 0.5 }, 'EUR')).toBe('€0.50 (± not known)');
});

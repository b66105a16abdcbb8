import { expect, test } from 'vitest';
import {
  costWords,
  durationWords,
  energyWords,
  inOneLine,
  lengthWords,
  plainNumber,
  spanWords,
} from '../../../../src/site/plan/browser/plan-words.ts';

test('numbers have as many digits as their size deserves', () => {
  expect([1234.5, 123.4, 12.34, 1.234, 0.1234].map(plainNumber)).toEqual(['1,235', '123', '12.3', '1.23', '0.123']);
});

test('values keep the digits that their interval leaves, or say that there is none', () => {
  expect(inOneLine(spanWords({ value: 41.234, low: 38.9, high: 43.6 }, 'mW/cm²'))).toBe('41.2 ± 2.4 mW/cm²');
  expect(inOneLine(spanWords({ value: 41.234, low: 40.9, high: 43.6 }, 'mW/cm²'))).toBe('41.2 mW/cm² (40.9 to 43.6)');
  expect(inOneLine(spanWords({ value: 41.234 }, 'mW/cm²'))).toBe('41.2 mW/cm² (± not known)');
});

test('durations are told in the guide’s notation of times', () => {
  expect(inOneLine(durationWords({ value: 300, low: 240, high: 360 }))).toBe('5 min (4 min to 6 min)');
  expect(inOneLine(durationWords({ value: 3913 }))).toBe('1 h 5 min (± not known)');
});

test('below a kilowatt-hour energy is in watt-hours', () => {
  expect(inOneLine(energyWords({ value: 0.0123 }))).toBe('12.3 Wh (± not known)');
  expect(inOneLine(energyWords({ value: 1.5 }))).toBe('1.50 kWh (± not known)');
});

test('cost is no finer than a hundredth of a cent', () => {
  expect(inOneLine(costWords({ value: 0.0123456, low: 0.0123455, high: 0.0123457 }, 'EUR'))).toBe('€0.0123 ± 0.0000');
  expect(inOneLine(costWords({ value: 0.014, low: 0.0135, high: 0.02 }, 'EUR'))).toBe('€0.0140 (€0.0135 to €0.0200)');
  expect(inOneLine(costWords({ value: 0.5 }, 'EUR'))).toBe('€0.50 (± not known)');
});

test('distances are in the unit that the reader writes', () => {
  expect([lengthWords(30, 'cm'), lengthWords(30, 'in')]).toEqual(['30 cm', '11.8 in']);
});

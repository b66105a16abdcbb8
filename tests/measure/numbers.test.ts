import { expect, test } from 'vitest';
import { number } from '../../src/measure/numbers.ts';

test.each([
  [47.8532, undefined, '47.85'],
  [47.8, undefined, '47.8'],
  [100, undefined, '100'],
  [0.000123456, undefined, '0.0001235'],
  [1234567, undefined, '1235000'],
  [1234567, 7, '1234567'],
  [1.005, 3, '1'],
  [2.6666, 1, '3'],
])('%d with %s digits is written %s', (value, digits, text) => {
  expect(number(value, digits)).toBe(text);
});

test('a negative number has a minus sign, not a hyphen', () => {
  expect(number(-3.25)).toBe('−3.25');
});

test('nothing is written as a negative zero', () => {
  expect(number(0)).toBe('0');
  expect(number(-0)).toBe('0');
});

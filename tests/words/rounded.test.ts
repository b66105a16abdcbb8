import { expect, test } from 'vitest';
import { rounded } from '../../src/words/rounded.ts';

test.each([
  [61.2345, '61.2'],
  [100, '100'],
  [1234, '1230'],
  [0.012345, '0.0123'],
  [60, '60'],
  [0, '0'],
])('%d is written %s in a sentence', (value, text) => {
  expect(rounded(value)).toBe(text);
});

test('as many digits as are asked for', () => {
  expect(rounded(61.2345, 2)).toBe('61');
  expect(rounded(203.45678, 6)).toBe('203.457');
});

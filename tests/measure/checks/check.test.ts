import { expect, test } from 'vitest';
import { words } from '../../../src/measure/checks/check.ts';

test.each([
  [61.2345, '61.2'],
  [100, '100'],
  [1234, '1230'],
  [0.012345, '0.0123'],
  [60, '60'],
  [0, '0'],
])('%d is written %s in a sentence', (value, text) => {
  expect(words(value)).toBe(text);
});

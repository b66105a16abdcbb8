import { expect, test } from 'vitest';
import { say } from '../../../src/words/say.ts';

test.each([
  ['paid', 'C = 599 EUR, really paid on 20 Feb 2026'],
  ['list', 'C = 599 EUR, list price on 20 Feb 2026'],
] as const)('a price that is %s says so behind its equation', (kind, words) => {
  expect(say({ code: 'price-calculation', equation: 'C = 599 EUR', kind, date: '2026-02-20' })).toBe(words);
});

test('a list price is told as one', () => {
  expect(say({ code: 'list-price-only' })).toBe('list price: what buyers really pay is not recorded');
});

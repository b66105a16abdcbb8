import { expect, test } from 'vitest';
import type { Figure } from '../../src/measure/figure.ts';
import { carriedWords } from '../../src/words/carried-words.ts';

const figure = (carriedOver?: Figure['carriedOver']) => ({ carriedOver }) as Figure;

test.each([
  [undefined, undefined],
  [{ from: ['2026-11-10'], isWhole: true }, 'from 10 Nov 2026'],
  [{ from: ['2026-11-10'], isWhole: false }, 'in part from 10 Nov 2026'],
  [{ from: ['2025-11-20', '2026-11-10'], isWhole: false }, 'in part from 20 Nov 2025 and 10 Nov 2026'],
])('%j is told as "%s"', (carriedOver, words) => {
  expect(carriedWords(figure(carriedOver))).toBe(words);
});

test('a gap is from no day', () => {
  expect(carriedWords({ gap: true, metric: 'sound-on', reason: { code: 'not-measured' } })).toBeUndefined();
});

import { expect, test } from 'vitest';
import { BENCH_CAUTIONS, biasRangeWords, biasWords } from '../../src/words/bench-words.ts';

const NINE = { columns: 3, rows: 3, inset: 2.54 };

test('what a grid misses, what halves it and what that costs', () => {
  const { answer, better } = biasWords(
    NINE,
    { from: -0.253, to: -0.142 },
    {
      points: { grid: { ...NINE, columns: 4, rows: 5 }, bias: { from: -0.12, to: -0.071 }, extra: 11 },
      inset: { grid: { ...NINE, inset: 7.2 }, bias: { from: -0.047, to: 0.058 }, extra: 0 },
    },
  );
  expect(answer).toBe('The mean of 3 × 3 points is expected to be off by −25\u00a0% to −14\u00a0%.');
  expect(better).toEqual([
    '4 × 5 points at the same inset leave −12\u00a0% to −7.1\u00a0%, for 11 more points: 33 readings at 3 a point.',
    'An inset of 7.2 cm (2.83 in) leaves −4.7\u00a0% to +5.8\u00a0%, for no more points.',
  ]);
});

test('little is called little, and nothing found is said', () => {
  expect(biasWords(NINE, { from: -0.005, to: 0.013 }, {}).better).toEqual([
    'That is little; no denser grid is worth its time.',
  ]);
  expect(biasWords(NINE, { from: -0.05, to: 0 }, {}).better[0]).toMatch(/^No grid of up to 40 points/);
  expect(biasRangeWords({ from: -0.0001, to: 0.0001 })).toBe('0.0\u00a0% to 0.0\u00a0%');
});

test('the cautions name eyewear by its attenuation, and call nothing safe', () => {
  const all = BENCH_CAUTIONS.map(([title, text]) => `${title} ${text}`).join(' ');
  expect(all).toMatch(/eyewear of stated attenuation/);
  expect(all).not.toMatch(/\bsafe\b/);
});

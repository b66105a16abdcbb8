import { describe, expect, test } from 'vitest';
import { timeRangeWords, timeWords } from '../../src/words/time-words.ts';

describe('times in one notation', () => {
  test('without an interval: three digits, from a minute on whole seconds that are never more', () => {
    expect([0.012345, 9.876, 47.1733, 60, 64.96, 119, 120, 403.326, 1000, 3600, 3913, 12_345].map(timeWords)).toEqual([
      ...['0.0123 s', '9.88 s', '47.2 s', '1 min', '1 min 5 s', '1 min 59 s', '2 min', '6 min 43 s', '16 min 40 s'],
      ...['1 h', '1 h 5 min', '3 h 25 min'],
    ]);
    expect(timeWords(99.9)).toBe('1 min 39 s');
  });

  test.each([
    [239.6, 227.1, 253.2, '4 min', '3 min 47 s to 4 min 13 s'],
    [40.04, 38, 42.1, '40.0 s', '38.0 s to 42.1 s'],
    [58, 50, 66, '58 s', '50 s to 1 min 6 s'],
    [59.99, 58, 62, '1 min', '58.0 s to 1 min 2 s'],
    [1203, 1024, 1390, '20 min', '17 min to 23 min 10 s'],
    [3913, 3701, 4111, '1 h 5 min', '1 h 2 min to 1 h 9 min'],
    [40_000, 36_000, 44_000, '11 h 10 min', '10 h to 12 h 10 min'],
    [70, 10, 5000, '1 min', '10 s to 1 h 20 min'],
    [5e7, 4e7, 6e7, '13,889 h', '11,111 h to 16,667 h'],
    [100, 100, 100, '1 min 40 s', '1 min 40 s to 1 min 40 s'],
  ])('%f s within %f and %f: the digits that the interval leaves', (value, low, high, shown, interval) => {
    expect(timeRangeWords({ value, low, high })).toEqual({ value: shown, interval });
  });

  test('no unit is ever full, and nothing is nowhere', () => {
    for (let seconds = 0.5; seconds < 20_000; seconds *= 1.013) {
      for (const half of [0.003, 0.04, 0.3, 0.6]) {
        const { value, interval } = timeRangeWords({
          value: seconds,
          low: seconds * (1 - half),
          high: seconds * (1 + half),
        });
        expect(`${value} ${interval}`).not.toMatch(/(?<![\d.,])60(?:\.0*)? (?:s|min)\b|NaN|^ | {2}/);
      }
      expect(timeWords(seconds)).not.toMatch(/(?<![\d.,])60(?:\.0*)? (?:s|min)\b/);
    }
  });
});

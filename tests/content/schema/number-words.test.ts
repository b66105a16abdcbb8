import { describe, expect, test } from 'vitest';
import { bareNumberHint, fractionIn, isPlaceholder } from '../../../src/content/schema/number-words.ts';

describe('what stands where nothing was read', () => {
  test.each([
    'n/a',
    'N/A',
    'na',
    'n.a.',
    'n. a.',
    '-',
    '--',
    '–',
    '?',
    '...',
    'none',
    'tbd',
    'TBC',
    'todo',
    'unknown',
    ' not read ',
    'no data',
  ])('"%s"', (text) => {
    expect(isPlaceholder(text)).toBe(true);
  });

  test.each(['5', '-5', 'nap', 'no', 'noon', '', 'none of it', 0, null, undefined, '2026-11-22'])(
    '%j is something',
    (text) => {
      expect(isPlaceholder(text)).toBe(false);
    },
  );
});

describe('a bare number is wanted', () => {
  const CURRENCY = ', and nothing else; the currency of a price stands in "currency"';
  test.each([
    ['4790 SEK', `write 4790${CURRENCY}`],
    ['SEK 4790', `write 4790${CURRENCY}`],
    ['4 790 kr', `write 4790${CURRENCY}`],
    ['€229.50', `write 229.50${CURRENCY}`],
    ['229,50 EUR', `write 229.50, with a decimal point${CURRENCY}`],
    ['4.790,00 €', `write 4790.00${CURRENCY}`],
    ['1,234,567', 'write 1234567'],
    ['4,790', 'write 4790, or 4.790 with a decimal point'],
    ['229,5', 'write 229.5, with a decimal point'],
    ["4'790", 'write 4790'],
    ['4790', 'write 4790 without quotes'],
    ['12 months', 'write 12 alone: the unit is the field’s own'],
    ['200-300', 'a range is no reading: write one reading, or, where repeats may stand, a list of them: [200, 300]'],
    ['one', undefined],
    ['', undefined],
  ])('"%s": %s', (text, hint) => {
    expect(bareNumberHint(text)).toBe(hint);
  });
});

describe('fractions', () => {
  test.each([
    ['7 1/2 in', 7.5, 'in'],
    ['1/4', 0.25, ''],
    ['11 15/16"', 11.9375, '"'],
    ['2⅜ in', 2.375, 'in'],
  ])('%s', (text, number, unit) => {
    expect(fractionIn(text)).toEqual({ number, unit });
  });

  test.each(['7 in', '4/4 in', '5/4 in', '1/0', '1/2/3', '7 1/2.5', 'W/m2', '22/11/2026', '41 mW/cm2', '1 W/m2'])(
    '%s is none',
    (text) => {
      expect(fractionIn(text)).toBeUndefined();
    },
  );
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nearest } from '../../../src/content/schema/suggest.ts';
import { RUNS } from '../../measure/make.ts';

const FIELDS = ['maker', 'model', 'status', 'verdict', 'prices', 'field', 'housing', 'sessions'];

describe('nearest', () => {
  test.each([
    ['modl', 'model'],
    ['modle', 'model'],
    ['hosuing', 'housing'],
    ['satus', 'status'],
    ['Housing', 'housing'],
    ['HOUSING', 'housing'],
    ['session', 'sessions'],
    ['price', 'prices'],
    ['verdikt', 'verdict'],
  ])('%s is %s', (word, meant) => {
    expect(nearest(word, FIELDS)).toBe(meant);
  });

  test.each(['colour', 'xyzzy', '', 'notes', 'constructor', '__proto__'])('%s is like none of them', (word) => {
    expect(nearest(word, FIELDS)).toBeUndefined();
  });

  test('of none there is none', () => {
    expect(nearest('model', [])).toBeUndefined();
  });

  test('a single letter is no slip of another one', () => {
    expect(nearest('x', ['m', 'W'])).toBeUndefined();
    expect(nearest('M', ['m', 'W'])).toBe('m');
  });

  test('of equally near ones the first is taken', () => {
    expect(nearest('moder', ['model', 'modes'])).toBe('model');
    expect(nearest('moder', ['modes', 'model'])).toBe('modes');
  });

  const word = fc.string({ unit: fc.constantFrom(...'abcdefghij'), minLength: 1, maxLength: 14 });

  test('a candidate is its own nearest', () => {
    fc.assert(
      fc.property(fc.uniqueArray(word, { minLength: 1, maxLength: 8 }), fc.nat(), (words, n) => {
        const own = words[n % words.length] as string;
        expect(nearest(own, words)).toBe(own);
      }),
      RUNS,
    );
  });

  test('one letter missing, doubled or wrong in a word of four and more is found', () => {
    fc.assert(
      fc.property(
        word.filter((it) => it.length >= 4),
        fc.nat(),
        fc.constantFrom('drop', 'double', 'change'),
        (own, n, slip) => {
          const at = n % own.length;
          const put = { drop: '', double: (own[at] ?? '').repeat(2), change: 'z' }[slip];
          expect(nearest(own.slice(0, at) + put + own.slice(at + 1), [own])).toBe(own);
        },
      ),
      RUNS,
    );
  });

  test('never throws, and answers with one of the candidates or none', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), fc.array(fc.string({ unit: 'binary' })), (own, candidates) => {
        const answer = nearest(own, candidates);
        expect(answer === undefined || candidates.includes(answer)).toBe(true);
      }),
      { ...RUNS, numRuns: 100 },
    );
  });
});

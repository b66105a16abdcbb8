import fc from 'fast-check';
import { expect, test } from 'vitest';
import { twoDigits } from '../../src/words/two-digits.ts';
import { RUNS } from '../measure/make.ts';

const asWritten = (value: number) => Number(value.toPrecision(2)).toString();

test.each([
  [0, '0'],
  [0.2549, '0.25'],
  [2.996, '3'],
  [123, '120'],
  [99.6, '100'],
  [0.000001, '0.000001'],
  [1.26e-9, '1.3e-9'],
])('%d: %s', (value, text) => {
  expect(twoDigits(value)).toBe(text);
});

test('is what JavaScript makes of two significant digits, ties and all', () => {
  const powers = fc.tuple(fc.double({ min: 1, max: 10, noNaN: true }), fc.integer({ min: -12, max: 12 }));
  const ties = fc.tuple(fc.integer({ min: 10, max: 99 }), fc.integer({ min: -9, max: 9 }));
  fc.assert(
    fc.property(
      fc.oneof(
        fc.double({ min: 0, noNaN: true }),
        powers.map(([it, power]) => it * 10 ** power),
        ties.map(([digits, power]) => (digits + 0.5) * 10 ** power),
      ),
      (value) => {
        // What is written already is written again.
        for (const _ of [1, 2]) expect(twoDigits(value)).toBe(asWritten(value));
      },
    ),
    RUNS,
  );
});

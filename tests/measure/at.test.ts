import { expect, test } from 'vitest';
import { at } from '../../src/measure/at.ts';

test('gives the element of a place', () => {
  expect(at(['a', 'b'], 1)).toBe('b');
  expect(at(Float64Array.of(1, Number.NaN), 1)).toBeNaN();
});

test.each([-1, 2, 0.5, Number.NaN])('has nothing at %d of two', (place) => {
  expect(() => at(['a', 'b'], place)).toThrow(RangeError);
});

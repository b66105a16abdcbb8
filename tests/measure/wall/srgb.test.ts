import { describe, expect, test } from 'vitest';
import { encodedOf, linearOf, linearTable, luminanceOf } from '../../../src/measure/wall/srgb.ts';

describe('sRGB', () => {
  // IEC 61966-2-1, from memory; recomputed in another program with 30 digits.
  test.each([
    [0, 0],
    [0.04045, 0.0031308049535603713],
    [10 / 255, 0.0030352698],
    [11 / 255, 0.0033465358],
    [0.5, 0.21404114],
    [188 / 255, 0.5028865],
    [1, 1],
  ])('%d stands for %d of the light', (encoded, light) => {
    expect(linearOf(encoded)).toBeCloseTo(light, 7);
    expect(encodedOf(light)).toBeCloseTo(encoded, 6);
  });

  test('does not jump where its pieces join', () => {
    expect(linearOf(0.04045 + 1e-9) - linearOf(0.04045)).toBeLessThan(1e-6);
  });

  test('cuts off what is no light', () => {
    expect(encodedOf(-1)).toBe(0);
    expect(encodedOf(Number.NaN)).toBe(0);
    expect(encodedOf(3)).toBe(1);
  });

  test('gives white a luminance of one', () => {
    expect(luminanceOf(1, 1, 1)).toBeCloseTo(1, 12);
  });

  test('takes linear numbers as they are', () => {
    expect(linearTable(256, 'linear')[51]).toBeCloseTo(0.2, 7);
    expect(linearTable(256, 'automatic')[128]).toBeCloseTo(0.2158605, 6);
  });
});

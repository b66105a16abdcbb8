import { describe, expect, test } from 'vitest';
import { lambertianExponent } from '../../../src/measure/beam/beam.ts';
import {
  addCosine,
  BASIS,
  BASIS_EXPONENTS,
  intensityAt,
  profileHalfAngle,
  squaredWeights,
} from '../../../src/measure/beam/profile-basis.ts';
import { cosineWeights } from '../../support/cosine-weights.ts';

const cosine = (degrees: number) => Math.cos((degrees * Math.PI) / 180);

describe('a beam as a sum of powers of the cosine', () => {
  test.each([5, 8, 15, 27.3, 45, 60, 78])('half angle %d°: the intensity is that of the power itself', (half) => {
    const m = lambertianExponent(half);
    const weights = cosineWeights(m);
    expect(weights.reduce((sum, it) => sum + it, 0)).toBeCloseTo(1, 12);
    const axis = (m + 1) / (2 * Math.PI);
    for (let angle = 0; angle < 90; angle += 3) {
      expect(Math.abs(intensityAt(weights, angle) - axis * cosine(angle) ** m)).toBeLessThan(1.5e-3 * axis);
    }
  });

  test('an intensity gives off 2 pi / (m + 1) times what it has on the axis', () => {
    const weights = new Float64Array(BASIS);
    addCosine(weights, 3, 0.5);
    expect(weights.reduce((sum, it) => sum + it, 0)).toBeCloseTo((0.5 * 2 * Math.PI) / 4, 12);
    expect(intensityAt(weights, 0)).toBeCloseTo(0.5, 3);
  });

  test.each([6, 20, 30, 60])('the half angle of one power is found again: %d°', (half) => {
    expect(profileHalfAngle(cosineWeights(lambertianExponent(half)))).toBeCloseTo(half, 0);
  });

  test('of a beam with a dip it is the outer side, against its highest value', () => {
    const weights = new Float64Array(BASIS);
    addCosine(weights, 2, 1);
    addCosine(weights, 30, -0.9);
    const values = Array.from({ length: 900 }, (_, i) => cosine(i / 10) ** 2 - 0.9 * cosine(i / 10) ** 30);
    const outer = values.findLastIndex((it) => it >= Math.max(...values) / 2) / 10;
    expect(Math.abs(profileHalfAngle(weights) - outer)).toBeLessThan(0.5);
  });

  test('the square of a beam is that of its light: sums over any places agree', () => {
    const weights = new Float64Array(BASIS);
    addCosine(weights, 4, 1);
    addCosine(weights, 25, -0.6);
    const squares = new Float64Array(BASIS);
    squaredWeights(weights, squares);
    const z = 12;
    const light = (of: ArrayLike<number>, rho: number) =>
      BASIS_EXPONENTS.reduce(
        (sum, { exponent }, k) =>
          sum +
          ((of[k] as number) * ((1000 * (exponent + 1)) / (2 * Math.PI * z * z))) /
            (1 + (rho / z) ** 2) ** ((exponent + 3) / 2),
        0,
      );
    for (const rho of [0, 3, 8, 14]) {
      const square = (1000 / (2 * Math.PI * z * z)) * light(squares, rho);
      expect(Math.abs(square - light(weights, rho) ** 2)).toBeLessThan(4e-3 * light(weights, 4) ** 2);
    }
  });
});

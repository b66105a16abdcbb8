import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { beamHalfAngle, lambertianExponent } from '../../../src/measure/beam/beam.ts';
import { chiSquareExceeds } from '../../../src/measure/beam/chi-square.ts';
import { emitterParts } from '../../../src/measure/beam/emitter.ts';
import { erf } from '../../../src/measure/beam/error-function.ts';
import { irradianceOver } from '../../../src/measure/beam/plane-map.ts';
import { expectToMeet } from '../../references/check-value.ts';
import { AXIAL_INTENSITY, BEAM_ORDERS, CHI_SQUARE_TAILS, ERROR_FUNCTION } from '../../references/optics.ts';
import { axialIntensity } from '../../references/sum-over-leds.ts';
import { oneExponent } from '../../support/one-exponent.ts';
import { RUNS } from '../make.ts';
import { integral, normalBelow } from '../random-numbers.ts';

describe('Lambertian exponent and half angle', () => {
  test.each(BEAM_ORDERS)('$label', (row) => {
    expectToMeet(lambertianExponent(row.arguments.halfAngle), row);
  });

  test(AXIAL_INTENSITY.label, () => {
    const { halfAngle, power } = AXIAL_INTENSITY.arguments;
    const exponent = lambertianExponent(halfAngle);
    expectToMeet(axialIntensity(exponent, power), AXIAL_INTENSITY);
    // One LED as the model has it: what falls on a square centimetre before it, over the solid angle of that.
    const led = emitterParts({ kind: 'leds', columns: 1, rows: 1, ledSize: 0 }, { width: 1, height: 1 });
    const [before = Number.NaN] = irradianceOver(led, oneExponent(exponent, power), 50, [0], [0]);
    expect(((before / 1000) * 50 ** 2) / axialIntensity(exponent, power)).toBeCloseTo(1, 6);
  });

  test('each is the inverse of the other, to the ends of the range', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 89.9, noNaN: true }), (angle) => {
        expect(Math.abs(beamHalfAngle(lambertianExponent(angle)) / angle - 1)).toBeLessThan(1e-9);
      }),
      RUNS,
    );
  });

  test('the intensity is half of that on the axis at the half angle', () => {
    for (const angle of [3, 10, 30, 60, 85]) {
      expect(Math.cos((angle * Math.PI) / 180) ** lambertianExponent(angle)).toBeCloseTo(0.5, 12);
    }
  });

  test('the intensity adds up to the power over the hemisphere', () => {
    for (const exponent of [0.4, 1, 4.8, 20, 150]) {
      const flux = integral(
        (a) => axialIntensity(exponent, 7) * Math.cos(a) ** exponent * 2 * Math.PI * Math.sin(a),
        0,
        Math.PI / 2,
      );
      expect(Math.abs(flux / 7 - 1)).toBeLessThan(1e-3);
    }
  });

  test.each([0, 90, -30, 120, Number.NaN, Number.POSITIVE_INFINITY])('a half angle of %d is refused', (angle) => {
    expect(() => lambertianExponent(angle)).toThrow(RangeError);
  });

  test.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('an exponent of %d is refused', (exponent) => {
    expect(() => beamHalfAngle(exponent)).toThrow(RangeError);
  });
});

describe('error function', () => {
  test.each(ERROR_FUNCTION)('$label', (row) => {
    expectToMeet(erf(row.arguments), row);
    expect(erf(-row.arguments)).toBe(-erf(row.arguments));
  });

  test('agrees with the integral of the normal density all along', () => {
    for (let x = 0; x < 6; x += 0.0473) {
      expect(Math.abs(erf(x) - (2 * normalBelow(x * Math.SQRT2) - 1))).toBeLessThan(1e-10);
    }
  });

  test('keeps its digits near zero, and ends at 1', () => {
    expect(erf(0)).toBe(0);
    for (const x of [1e-9, 1e-5, 1e-3])
      expect(erf(x) / ((2 / Math.sqrt(Math.PI)) * (x - x ** 3 / 3))).toBeCloseTo(1, 11);
    expect([erf(7), erf(-7), erf(Number.POSITIVE_INFINITY)]).toEqual([1, -1, 1]);
  });
});

describe('chi-square', () => {
  test.each(CHI_SQUARE_TAILS)('$label', (row) => {
    expectToMeet(chiSquareExceeds(...row.arguments), row);
  });

  test('is 1 at nothing and refuses half degrees', () => {
    expect(chiSquareExceeds(0, 3)).toBe(1);
    expect(() => chiSquareExceeds(1, 0)).toThrow(RangeError);
    expect(() => chiSquareExceeds(1, 2.5)).toThrow(RangeError);
  });
});

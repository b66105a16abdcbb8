import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type AngularResponse,
  angularError,
  type LitField,
  obliqueError,
  overField,
  type Spot,
} from '../../../src/measure/instrument/angular-response.ts';
import { RUNS, slanted } from '../make.ts';

const RADIAN = Math.PI / 180;

/** The integral of f(e) sin 2e over angles in degrees, by Simpson's rule: another road than the closed form. */
function integral(f: (degrees: number) => number, to: number, steps = 2000): number {
  const h = to / steps;
  let sum = 0;
  for (let i = 0; i <= steps; i++) {
    const weight = i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2;
    sum += weight * f(i * h) * Math.sin(2 * i * h * RADIAN);
  }
  return (sum * h * RADIAN) / 3;
}

const f2Of = (response: (degrees: number) => number) =>
  integral((e) => Math.abs(response(e) / Math.cos(e * RADIAN) - 1), 85);

const byF2 = (f2: number): AngularResponse => ({ kind: 'f2', f2 });
/** Irradiance at a spot over the exitance of the field. */
const fieldViewFactor = (field: LitField, spot: Spot) => overField(field, spot, () => 0).weight / Math.PI;

/** The error of the mean over nine spots in the middle of a field's thirds, each weighted by its light. */
function obliqueErrorOver(response: AngularResponse, field: LitField): number {
  const thirds = [1 / 6, 1 / 2, 5 / 6];
  const spots = thirds.flatMap((y) => thirds.map((x) => ({ x: x * field.width, y: y * field.height })));
  const light = spots.map((spot) => overField(field, spot, (e) => angularError(response, e)));
  return light.reduce((sum, it) => sum + it.error, 0) / light.reduce((sum, it) => sum + it.weight, 0);
}

const share = fc.double({ min: 0.001, max: 0.2, noNaN: true });

describe('the error at an angle, from f2', () => {
  test('the integral that defines f2 is the one of the check value', () => {
    // Formula of ISO/CIE 19476 (CIE S 023) from memory; a response of cos^1.1 gives 0.0456910, recomputed.
    expect(f2Of((e) => Math.cos(e * RADIAN) ** 1.1)).toBeCloseTo(0.045691, 6);
    expect(f2Of((e) => Math.cos(e * RADIAN))).toBeCloseTo(0, 12);
  });

  test('its integral over the angles is f2 again', () => {
    for (const f2 of [0.01, 0.025, 0.1]) {
      expect(integral((e) => angularError(byF2(f2), e), 85)).toBeCloseTo(f2, 6);
    }
  });

  test('is that of a receiver of nearly a cosine, which the shape is taken from', () => {
    // cos^(1 + d) with a small d: its f2 by the integral, its error at each angle by itself.
    const d = 1e-4;
    const f2 = f2Of((e) => Math.cos(e * RADIAN) ** (1 + d));
    for (const e of [10, 45, 75, 85]) {
      const error = 1 - Math.cos(e * RADIAN) ** d;
      expect(angularError(byF2(f2), e) / error).toBeCloseTo(1, 3);
    }
  });

  test('is nought straight ahead and grows with the angle, the same to every side', () => {
    expect(angularError(byF2(0.025), 0)).toBe(0);
    for (let e = 1; e < 90; e++) {
      expect(angularError(byF2(0.025), e)).toBeGreaterThan(angularError(byF2(0.025), e - 1));
      expect(angularError(byF2(0.025), -e)).toBe(angularError(byF2(0.025), e));
    }
  });

  test('of a perfect receiver is nought at every angle, a right angle too', () => {
    expect([0, 45, 90].map((e) => angularError(byF2(0), e))).toEqual([0, 0, 0]);
  });
});

describe('the error at an angle, from named angles', () => {
  // Out of order: the order of a file is no statement.
  const named: AngularResponse = {
    kind: 'angles',
    points: [
      { angle: 60, error: 0.03 },
      { angle: 30, error: 0.005 },
    ],
  };

  test.each([
    [0, 0],
    [15, 0.0025],
    [30, 0.005],
    [45, 0.0175],
    [60, 0.03],
    // On along the last line.
    [75, 0.0425],
  ])('at %d° is %d', (degrees, error) => {
    expect(angularError(named, degrees)).toBeCloseTo(error, 12);
  });

  test('past the last one never falls, though the last line does', () => {
    const falling: AngularResponse = {
      kind: 'angles',
      points: [
        { angle: 30, error: 0.03 },
        { angle: 60, error: 0.01 },
      ],
    };
    expect(angularError(falling, 45)).toBeCloseTo(0.02, 12);
    expect(angularError(falling, 80)).toBe(0.01);
  });

  test('from one angle alone is a straight line from nought', () => {
    const one: AngularResponse = { kind: 'angles', points: [{ angle: 60, error: 0.03 }] };
    expect(angularError(one, 30)).toBeCloseTo(0.015, 12);
    expect(angularError(one, 80)).toBeCloseTo(0.04, 12);
  });
});

describe('the error before a lit field', () => {
  test('the light is weighed as the view factor of a rectangle says', () => {
    // Howell's catalogue, B-3 (number from memory; value recomputed by quadrature): 0.2 x 0.6 m at 0.1524 m, middle.
    const middle = fieldViewFactor({ width: 20, height: 60, distance: 15.24 }, { x: 10, y: 30 });
    expect(Math.abs(middle / 0.521879 - 1)).toBeLessThan(2e-3);
    // The same catalogue: a square before its corner, as far away as it is wide.
    const corner = fieldViewFactor({ width: 10, height: 10, distance: 10 }, { x: 0, y: 0 });
    expect(Math.abs(corner / 0.138532 - 1)).toBeLessThan(2e-3);
  });

  test('against points of light spread evenly over the field, added up one by one', () => {
    const field = { width: 30, height: 60, distance: 15 };
    for (const spot of [
      { x: 15, y: 30 },
      { x: 2.54, y: 2.54 },
    ]) {
      let [light, error] = [0, 0];
      const n = 300;
      for (let i = 0; i < n; i++) {
        for (let j = 0; j < n; j++) {
          const [dx, dy] = [((i + 0.5) * 30) / n - spot.x, ((j + 0.5) * 60) / n - spot.y];
          const square = dx ** 2 + dy ** 2 + 225;
          const cosine = 15 / Math.sqrt(square);
          light += cosine ** 2 / square;
          error += (cosine ** 2 / square) * angularError(byF2(0.025), Math.acos(cosine) / RADIAN);
        }
      }
      expect(Math.abs(obliqueError(byF2(0.025), field, spot) / (error / light) - 1)).toBeLessThan(2e-3);
    }
  });

  test('of a meter that errs alike at all angles is that error, wherever it stands', () => {
    fc.assert(
      fc.property(share, fc.double({ min: 3, max: 100, noNaN: true }), (error, side) => {
        const field = { width: side, height: 2 * side, distance: 15.24 };
        expect(obliqueError(slanted(error), field)).toBeCloseTo(error, 12);
        expect(obliqueErrorOver(slanted(error), field)).toBeCloseTo(error, 12);
        expect(obliqueError(slanted(error))).toBeCloseTo(error, 12);
      }),
      RUNS,
    );
  });

  test('vanishes far away, where all light comes straight', () => {
    expect(obliqueError(byF2(0.025), { width: 30, height: 60, distance: 3000 })).toBeLessThan(1e-5);
  });

  test('grows as the panel comes nearer, and as it is larger', () => {
    const at = (distance: number, size = 1) =>
      obliqueError(byF2(0.025), { width: 30 * size, height: 60 * size, distance });
    expect(at(10)).toBeGreaterThan(at(15));
    expect(at(15)).toBeGreaterThan(at(30));
    expect(at(15, 2)).toBeGreaterThan(at(15));
  });

  test('before an endless plane is f2 and what lies beyond 85 degrees', () => {
    // The integral of -ln cos e sin 2e to 90 degrees is 1/2; to 85 degrees, which f2 looks at, 0.477667.
    expect(obliqueError(byF2(0.025))).toBeCloseTo((0.025 * 0.5) / 0.477667, 6);
    // A huge field comes near to it.
    const huge = obliqueError(byF2(0.025), { width: 30_000, height: 30_000, distance: 15 });
    expect(Math.abs(huge / obliqueError(byF2(0.025)) - 1)).toBeLessThan(0.02);
  });

  test('is of the order of one or two per cent before a tall panel at six inches with an f2 of 3 %', () => {
    const tall = obliqueErrorOver(byF2(0.03), { width: 22, height: 80, distance: 15.24 });
    expect(tall).toBeGreaterThan(0.01);
    expect(tall).toBeLessThan(0.02);
  });
});

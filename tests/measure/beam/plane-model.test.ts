import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lambertianExponent } from '../../../src/measure/beam/beam.ts';
import { emitterParts, type Field, type PlacedLed, placeLeds } from '../../../src/measure/beam/emitter.ts';
import { planeMap } from '../../../src/measure/beam/plane-map.ts';
import { expectToMeet } from '../../references/check-value.ts';
import {
  discFactor,
  parallelFactor,
  perpendicularFactor,
  RECTANGLE_FACTORS,
  SINGLE_LED,
} from '../../references/optics.ts';
import { irradianceAt } from '../../references/sum-over-leds.ts';
import { oneExponent } from '../../support/one-exponent.ts';
import { planeValuesOf } from '../../support/plane-values-of.ts';
import { RUNS } from '../make.ts';
import { SIX_INCHES } from './make.ts';

const ONE: PlacedLed[] = [{ x: 0, y: 0, share: 1, group: 0 }];
const WHOLE = { kind: 'continuous', beyond: 0 } as const;

/** Irradiance over exitance of a continuous Lambertian field: its configuration factor. */
function factorOf(field: Field, x: number, y: number, distance: number): number {
  const perWatt = planeValuesOf(emitterParts(WHOLE, field), field, [{ x, y }])(1, distance)[1] ?? Number.NaN;
  return (perWatt * field.width * field.height) / 1000;
}

/** A fine grid of like LEDs over a field, each in the middle of its cell. */
function fineGrid(field: Field, columns: number, rows: number): PlacedLed[] {
  return Array.from({ length: columns * rows }, (_, i) => ({
    x: field.width * (((i % columns) + 0.5) / columns - 0.5),
    y: field.height * ((Math.floor(i / columns) + 0.5) / rows - 0.5),
    share: 1 / (columns * rows),
    group: 0,
  }));
}

describe('one LED', () => {
  test.each(SINGLE_LED)('$label', (row) => {
    const { halfAngle, power, distance, aside } = row.arguments;
    const exponent = lambertianExponent(halfAngle);
    expectToMeet(irradianceAt(ONE, exponent, power, { x: aside, y: 0, z: distance }), row);
    const terms = emitterParts({ kind: 'leds', columns: 1, rows: 1, ledSize: 0 }, { width: 1, height: 1 });
    const [, modelled = 0] = planeValuesOf(terms, { width: 1, height: 1 }, [{ x: 0, y: aside }])(exponent, distance);
    expect(Math.abs((power * modelled) / row.expected - 1)).toBeLessThan(1e-6);
  });

  test('falls to half of its axial intensity at the half angle', () => {
    const angle = (25 * Math.PI) / 180;
    const place = { x: 40 * Math.sin(angle), y: 0, z: 40 * Math.cos(angle) };
    const towards = { x: -Math.sin(angle), y: 0, z: -Math.cos(angle) };
    const onAxis = irradianceAt(ONE, lambertianExponent(25), 3, { x: 0, y: 0, z: 40 });
    expect(irradianceAt(ONE, lambertianExponent(25), 3, place, towards) / onAxis).toBeCloseTo(0.5, 12);
  });

  test('a receiver turned away gets nothing, and one turned aside the cosine', () => {
    const place = { x: 0, y: 0, z: 20 };
    const straight = irradianceAt(ONE, 4, 1, place);
    expect(irradianceAt(ONE, 4, 1, place, { x: 0, y: 0, z: 1 })).toBe(0);
    expect(irradianceAt(ONE, 4, 1, place, { x: 0.6, y: 0, z: -0.8 }) / straight).toBeCloseTo(0.8, 12);
  });

  test('places behind the panel and normals of another length are refused', () => {
    expect(() => irradianceAt(ONE, 1, 1, { x: 0, y: 0, z: 0 })).toThrow(RangeError);
    expect(() => irradianceAt(ONE, 1, 1, { x: 0, y: 0, z: 5 }, { x: 0, y: 0, z: -2 })).toThrow(RangeError);
  });
});

describe('closed forms of Lambertian surfaces', () => {
  test.each(RECTANGLE_FACTORS)('$label', (row) => {
    const { a, b, c, corners } = row.arguments;
    expectToMeet(corners * parallelFactor(a, b, c), row);
    const modelled =
      corners === 4
        ? factorOf({ width: 2 * a, height: 2 * b }, 0, 0, c)
        : factorOf({ width: a, height: b }, a / 2, b / 2, c);
    expect(Math.abs(modelled - row.expected)).toBeLessThan(1e-6);
  });

  test('a continuous field meets the rectangle’s closed form at any place inside it', () => {
    fc.assert(
      fc.property(
        fc.record({
          width: fc.double({ min: 5, max: 60, noNaN: true }),
          height: fc.double({ min: 5, max: 160, noNaN: true }),
          p: fc.double({ min: 0.02, max: 0.98, noNaN: true }),
          q: fc.double({ min: 0.02, max: 0.98, noNaN: true }),
          distance: fc.double({ min: 1, max: 150, noNaN: true }),
        }),
        ({ width, height, p, q, distance }) => {
          const sides = [p * width, (1 - p) * width].flatMap((a) =>
            [q * height, (1 - q) * height].map((b) => parallelFactor(a, b, distance)),
          );
          const closed = sides.reduce((sum, it) => sum + it, 0);
          const modelled = factorOf({ width, height }, (p - 0.5) * width, (q - 0.5) * height, distance);
          expect(Math.abs(modelled / closed - 1)).toBeLessThan(1e-6);
        },
      ),
      RUNS,
    );
  });

  test('a grid of LEDs comes nearer to it as the pitch shrinks', () => {
    const field = { width: 20, height: 60 };
    const errors = [5, 10, 20, 40].map((columns) => {
      const e = irradianceAt(fineGrid(field, columns, 3 * columns), 1, 1, { x: 3, y: -8, z: 6 });
      const closed =
        parallelFactor(13, 38, 6) + parallelFactor(7, 38, 6) + parallelFactor(13, 22, 6) + parallelFactor(7, 22, 6);
      return Math.abs((e * 1200) / 1000 / closed - 1);
    });
    errors.slice(1).forEach((error, i) => {
      expect(error).toBeLessThan(errors[i] as number);
    });
    expect(errors.at(-1)).toBeLessThan(1e-4);
  });

  test('a receiver at right angles to the panel', () => {
    const [a, b, c] = [10, 30, 15.24];
    expect(perpendicularFactor(a, b, c)).toBeCloseTo(0.0388254713852, 12);
    const field = { width: a, height: b };
    // Over the corner, looking along the width.
    const e = irradianceAt(fineGrid(field, 100, 300), 1, 1, { x: -a / 2, y: -b / 2, z: c }, { x: 1, y: 0, z: 0 });
    expect(Math.abs((e * a * b) / 1000 / perpendicularFactor(a, b, c) - 1)).toBeLessThan(1e-4);
  });

  test('a disc on its axis', () => {
    const radius = 10;
    const rings = 200;
    const leds = Array.from({ length: rings }, (_, i) => ({
      x: radius * Math.sqrt((i + 0.5) / rings),
      y: 0,
      share: 1 / rings,
      group: 0,
    }));
    for (const distance of [4, 10, 15.24, 60]) {
      const e = irradianceAt(leds, 1, 1, { x: 0, y: 0, z: distance });
      expect(Math.abs((e * Math.PI * radius ** 2) / 1000 / discFactor(radius, distance) - 1)).toBeLessThan(1e-4);
    }
  });
});

describe('a whole panel', () => {
  const field = { width: 28, height: 61 };
  const emitter = { kind: 'leds', columns: 10, rows: 20, ledSize: 0.8 } as const;

  test.each([5, 10, 20, 30, 45, 60, 80])('planes agree with the plain sum over the LEDs, half angle %d°', (angle) => {
    const exponent = lambertianExponent(angle);
    const leds = placeLeds(emitter, field);
    const terms = emitterParts(emitter, field);
    for (const distance of [3, 15.24, 60, 200]) {
      const map = planeMap(terms, oneExponent(exponent, 2), distance, {
        width: 40,
        height: 70,
        columns: 5,
        rows: 7,
        x: 3,
        y: -2,
      });
      const axis = (1000 * 2 * (exponent + 1)) / (2 * Math.PI * distance ** 2) / leds.length;
      map.values.forEach((value, i) => {
        const place = { x: map.x[i % 5] as number, y: map.y[Math.floor(i / 5)] as number, z: distance };
        const plain = irradianceAt(leds, exponent, 2, place);
        expect(Math.abs(value - plain)).toBeLessThan(1e-6 * plain + 1e-9 * axis);
      });
    }
  });

  test('far away it is a point: inverse square', () => {
    const model = planeValuesOf(emitterParts(emitter, field), field, [{ x: 0, y: 0 }]);
    for (const angle of [10, 30, 60]) {
      const exponent = lambertianExponent(angle);
      const [, far = 0] = model(exponent, 2000);
      const [, farther = 0] = model(exponent, 4000);
      expect(Math.abs(far / farther / 4 - 1)).toBeLessThan(3e-3);
      expect(Math.abs((far * 2 * Math.PI * 2000 ** 2) / (1000 * (exponent + 1)) - 1)).toBeLessThan(4e-3);
    }
  });

  test('the light through a large plane is what was given off', () => {
    for (const [angle, side] of [
      [60, 1500],
      [45, 800],
      [30, 400],
      [10, 200],
    ] as const) {
      const plane = { width: side, height: side };
      const [mean = 0] = planeValuesOf(emitterParts(emitter, field), plane, [])(lambertianExponent(angle), SIX_INCHES);
      expect(Math.abs((mean * side * side) / 1000 - 1)).toBeLessThan(1e-3);
    }
  });

  test('on the axis it only falls with the distance', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 8, max: 78, noNaN: true }),
        fc.double({ min: 0.5, max: 150, noNaN: true }),
        fc.double({ min: 1.01, max: 3, noNaN: true }),
        (angle, near, times) => {
          const model = planeValuesOf(emitterParts(WHOLE, field), field, [{ x: 0, y: 0 }]);
          const [mean = 0, peak = 0] = model(lambertianExponent(angle), near);
          const [meanFar = 0, peakFar = 0] = model(lambertianExponent(angle), near * times);
          // At contact a wide field is as bright as its surface, whatever the distance; hence the model's own error.
          expect(peakFar).toBeLessThan(peak * (1 + 1e-6));
          expect(meanFar).toBeLessThan(mean);
        },
      ),
      RUNS,
    );
  });

  test('its maps are symmetric and grow with the power', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 6, max: 78, noNaN: true }),
        fc.double({ min: 2, max: 100, noNaN: true }),
        fc.double({ min: 0.1, max: 500, noNaN: true }),
        (angle, distance, power) => {
          const raster = { width: 50, height: 90, columns: 6, rows: 5 };
          const terms = emitterParts(emitter, field);
          const { values } = planeMap(terms, oneExponent(lambertianExponent(angle), power), distance, raster);
          const one = planeMap(terms, oneExponent(lambertianExponent(angle), 1), distance, raster).values;
          values.forEach((value, i) => {
            const [row, column] = [Math.floor(i / 6), i % 6];
            const mirrored = [values[row * 6 + 5 - column], values[(4 - row) * 6 + column]];
            for (const other of mirrored) expect(Math.abs((other as number) / value - 1)).toBeLessThan(1e-9);
            expect(Math.abs(value / power / (one[i] as number) - 1)).toBeLessThan(1e-9);
          });
        },
      ),
      { ...RUNS, numRuns: 40 },
    );
  });

  test('planes too near or too far, and beams too narrow, are refused', () => {
    const model = planeValuesOf(emitterParts(emitter, field), field, []);
    expect(() => model(1, 0)).toThrow(RangeError);
    expect(() => model(1, 1e6)).toThrow(RangeError);
    expect(() => model(5000, 15)).toThrow(RangeError);
    expect(() =>
      planeMap(emitterParts(emitter, field), oneExponent(1, 1), 15, { width: 1, height: 1, columns: 0, rows: 2 }),
    ).toThrow(RangeError);
  });
});

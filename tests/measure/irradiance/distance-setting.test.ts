import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { distanceComponents, distanceExponent } from '../../../src/measure/irradiance/distance-setting.ts';
import { expectToMeet } from '../../references/check-value.ts';
import { DISC_EXPONENTS, DISC_IRRADIANCE } from '../../references/distance-setting.ts';
import { RUNS } from '../make.ts';

/** Irradiance over exitance on the axis of a uniform Lambertian disc. */
const disc = (radius: number, distance: number) => radius ** 2 / (radius ** 2 + distance ** 2);

describe('the disc that the exponent is derived from', () => {
  test.each(DISC_IRRADIANCE.map((row) => [row.label, row] as const))('%s', (_, row) => {
    expectToMeet(disc(row.arguments.radius, row.arguments.distance), row);
  });
});

describe('distance exponent', () => {
  test.each(DISC_EXPONENTS.map((row) => [row.label, row] as const))('%s', (_, row) => {
    expectToMeet(distanceExponent(row.arguments.distance, row.arguments.area), row);
  });

  test('is the slope of the disc’s irradiance in logarithms', () => {
    const length = fc.double({ min: 1, max: 200, noNaN: true });
    fc.assert(
      fc.property(length, length, (radius, distance) => {
        const h = 1e-4;
        const near = Math.log(disc(radius, distance * (1 - h)));
        const far = Math.log(disc(radius, distance * (1 + h)));
        const slope = -(far - near) / (Math.log(1 + h) - Math.log(1 - h));
        expect(distanceExponent(distance, Math.PI * radius ** 2)).toBeCloseTo(slope, 6);
      }),
      RUNS,
    );
  });

  test('lies between 0 at contact and 2 far away', () => {
    expect(distanceExponent(0, 1800)).toBe(0);
    expect(distanceExponent(1e6, 1800)).toBeCloseTo(2, 6);
    expect(distanceExponent(15, 1)).toBeGreaterThan(1.99);
  });

  test('is that of a point where the area is not known: the largest possible', () => {
    expect(distanceExponent(15, undefined)).toBe(2);
  });
});

describe('the component of the distance', () => {
  const setting = { distance: 15.24, halfWidth: 0.2, area: 1800 };

  test('is one error a session, rectangular; farther is dimmer', () => {
    const [it] = distanceComponents(setting, 'lantern-40/2026-03-02', 50);
    expect(it).toMatchObject({
      source: {
        key: 'lantern-40/2026-03-02/distance',
        what: { code: 'distance-setting' },
        type: 'B',
        distribution: 'rectangular',
        degreesOfFreedom: Number.POSITIVE_INFINITY,
        evaluation: {
          code: 'distance-as-set',
          halfWidth: 0.2,
          distance: 15.24,
          exponent: distanceExponent(15.24, 1800),
        },
      },
    });
    const slope = (disc(Math.sqrt(1800 / Math.PI), 15.241) / disc(Math.sqrt(1800 / Math.PI), 15.239) - 1) / 0.002;
    expect(it?.contribution).toBeCloseTo((50 * slope * 0.2) / Math.sqrt(3), 3);
    expect(it?.contribution).toBeLessThan(0);
  });

  test('is not there where the distance is set exactly', () => {
    expect(distanceComponents({ ...setting, halfWidth: 0 }, 's', 50)).toEqual([]);
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { distanceGroups, SAME_DISTANCE_CM, sameDistance } from '../../../src/measure/irradiance/same-distance.ts';
import { RUNS } from '../make.ts';

describe('two distances', () => {
  test.each([
    [15.24, 15.24, true],
    [15.34, 15.24, true],
    [15.341, 15.24, false],
    [15.14, 15.24, true],
    [15.139, 15.24, false],
    // In the binary system 15.1 - 15 is more than 0.1.
    [15.1, 15, true],
    // What makers write for each other is two distances.
    [15, 15.24, false],
    [0, 0, true],
  ])('%d cm and %d cm are one: %s', (a, b, same) => {
    expect(sameDistance(a, b)).toBe(same);
    expect(sameDistance(b, a)).toBe(same);
  });

  test('that are one move the light of a point by no more than 1.4 % at 15 cm (inverse square, recomputed)', () => {
    expect((15 / (15 - SAME_DISTANCE_CM)) ** 2 - 1).toBeLessThan(0.014);
  });
});

describe('groups of distances', () => {
  test('hold what is one with the nearest of the group', () => {
    const groups = distanceGroups([30.2, 30, 30.1, 45]);
    expect([30, 30.1, 30.2, 45].map((it) => groups.get(it))).toEqual([30, 30, 30.2, 45]);
  });

  test('do not break where a rounding would: 30.049 and 30.051 cm are one', () => {
    expect(distanceGroups([30.049, 30.051]).get(30.051)).toBe(30.049);
  });

  test('of any distances: two of one group are one', () => {
    const near = fc.double({ min: 29, max: 31, noNaN: true });
    fc.assert(
      fc.property(fc.array(near, { minLength: 1, maxLength: 12 }), (all) => {
        const groups = distanceGroups(all);
        for (const a of all) {
          for (const b of all) if (groups.get(a) === groups.get(b)) expect(sameDistance(a, b)).toBe(true);
        }
      }),
      RUNS,
    );
  });
});

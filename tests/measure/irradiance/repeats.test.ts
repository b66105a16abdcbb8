import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pooledRepeats } from '../../../src/measure/irradiance/repeats.ts';
import { RUNS } from '../make.ts';

const irradiance = fc.double({ min: 1, max: 500, noNaN: true });

describe('pooled repeats', () => {
  test('weigh each point by its degrees of freedom', () => {
    // Variances 2 with one degree of freedom and 4 with two: (2 + 8) / 3.
    const it = pooledRepeats([[1, 3], [10, 12, 14], [50]]);
    expect(it?.degreesOfFreedom).toBe(3);
    expect(it?.standardDeviation).toBeCloseTo(Math.sqrt(10 / 3), 12);
  });

  test('are undefined where no point was read twice', () => {
    expect(pooledRepeats([])).toBeUndefined();
    expect(pooledRepeats([[1], [2], []])).toBeUndefined();
  });

  test('do not see the spread between points', () => {
    const points = fc.array(fc.array(irradiance, { minLength: 1, maxLength: 4 }), { minLength: 1, maxLength: 9 });
    fc.assert(
      fc.property(points, fc.array(irradiance, { minLength: 9, maxLength: 9 }), (readings, moves) => {
        const before = pooledRepeats(readings);
        const after = pooledRepeats(readings.map((point, i) => point.map((value) => value + (moves[i] as number))));
        expect(after?.degreesOfFreedom).toBe(before?.degreesOfFreedom);
        if (before) expect(after?.standardDeviation).toBeCloseTo(before.standardDeviation, 6);
      }),
      RUNS,
    );
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { modifiedZScores } from '../../../src/measure/irradiance/modified-z.ts';
import { expectToMeet } from '../../references/check-value.ts';
import { MODIFIED_Z } from '../../references/modified-z.ts';
import { RUNS } from '../make.ts';

describe('modified z-scores', () => {
  test.each(MODIFIED_Z.map((row) => [row.label, row] as const))('%s', (_, row) => {
    const { values, value } = row.arguments;
    expectToMeet(modifiedZScores(values)[values.indexOf(value)] ?? Number.NaN, row);
  });

  test('of equal values are all 0', () => {
    expect(modifiedZScores([7, 7, 7, 7])).toEqual([0, 0, 0, 0]);
    expect(modifiedZScores([7])).toEqual([0]);
  });

  test('of a large normal sample are near the plain z-scores', () => {
    // 999 evenly spaced quantiles of a normal distribution with mean 50 and sigma 4, by bisection of its integral.
    const sample = Array.from({ length: 999 }, (_, i) => 50 + 4 * quantile((i + 1) / 1000));
    const scores = modifiedZScores(sample);
    expect(scores[499]).toBeCloseTo(0, 6);
    expect(scores[840]).toBeCloseTo((sample[840] as number) / 4 - 12.5, 2);
  });

  test('of values shifted and scaled are the same', () => {
    const values = fc.array(fc.integer({ min: 0, max: 1000 }), { minLength: 1, maxLength: 20 });
    fc.assert(
      fc.property(values, fc.integer({ min: -500, max: 500 }), fc.constantFrom(0.25, 2, 8), (all, shift, scale) => {
        const before = modifiedZScores(all);
        const after = modifiedZScores(all.map((value) => value * scale + shift));
        after.forEach((score, i) => {
          expect(score).toBeCloseTo(before[i] as number, 9);
        });
      }),
      RUNS,
    );
  });

  test('leave their input in its order', () => {
    const values = [5, 1, 4];
    modifiedZScores(values);
    expect(values).toEqual([5, 1, 4]);
  });
});

/** Normal quantile by bisection of the series of the error function. */
function quantile(p: number): number {
  let low = -6;
  let high = 6;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (below(middle) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Φ(z) = 1/2 + φ(z) Σ z^(2k+1) / (1·3·5···(2k+1)). */
function below(z: number): number {
  let term = z;
  let sum = z;
  for (let k = 1; k < 120; k++) {
    term *= (z * z) / (2 * k + 1);
    sum += term;
  }
  return 0.5 + (sum * Math.exp(-z * z * 0.5)) / Math.sqrt(2 * Math.PI);
}

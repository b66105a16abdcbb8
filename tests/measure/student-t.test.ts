import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { studentQuantile } from '../../src/measure/student-t.ts';
import { expectToMeet } from '../references/check-value.ts';
import { T_975, TABLE_G2 } from '../references/student-t.ts';
import { RUNS } from './make.ts';
import { integral } from './random-numbers.ts';

describe('quantile of Student’s t', () => {
  test.each([...T_975, ...TABLE_G2].map((row) => [row.label, row] as const))('%s', (_, row) => {
    expectToMeet(studentQuantile(0.975, row.arguments), row);
  });

  test('is the closed form for one and two degrees of freedom', () => {
    for (const p of [0.6, 0.9, 0.975, 0.995]) {
      expect(studentQuantile(p, 1)).toBeCloseTo(Math.tan(Math.PI * (p - 0.5)), 7);
      expect(studentQuantile(p, 2)).toBeCloseTo((2 * p - 1) / Math.sqrt(2 * p * (1 - p)), 7);
    }
  });

  test('has 47.5 % of the density between it and zero', () => {
    for (let degrees = 2; degrees <= 60; degrees++) {
      const density = (x: number) => (1 + (x * x) / degrees) ** (-(degrees + 1) / 2);
      // Scaled by its own area: x = tan(a) brings the whole line within ±π/2. The integrand vanishes at the ends.
      const whole = integral((a) => density(Math.tan(a)) / Math.cos(a) ** 2, -1.570796, 1.570796);
      const part = integral(density, 0, studentQuantile(0.975, degrees));
      expect(part / whole).toBeCloseTo(0.475, 5);
    }
  });

  test('falls towards the normal quantile, however many degrees of freedom there are', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2000 }), (step) => {
        // From 1 to 1e20, evenly in the logarithm.
        const degrees = 10 ** (step / 100);
        const t = studentQuantile(0.975, degrees);
        expect(t).toBeGreaterThan(1.959963);
        expect(t).toBeLessThan(12.7063);
        expect(studentQuantile(0.975, degrees * 1.5)).toBeLessThan(t + 1e-6);
      }),
      RUNS,
    );
  });

  test('is the same when asked again', () => {
    expect(studentQuantile(0.975, 7)).toBe(studentQuantile(0.975, 7));
    expect(studentQuantile(0.975, 7)).not.toBe(studentQuantile(0.95, 7));
  });
});

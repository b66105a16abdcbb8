import fc from 'fast-check';
import jstat from 'jstat';
import { describe, expect, test } from 'vitest';
import { student975 } from '../../src/measure/student-t.ts';
import { NORMAL_975, STUDENT_975 } from '../../src/measure/student-t-table.ts';
import { expectToMeet } from '../references/check-value.ts';
import { T_975, TABLE_G2 } from '../references/student-t.ts';
import { RUNS } from './make.ts';
import { integral } from './random-numbers.ts';

describe('quantile of Student’s t', () => {
  test.each([...T_975, ...TABLE_G2].map((row) => [row.label, row] as const))('%s', (_, row) => {
    expectToMeet(student975(row.arguments), row);
  });

  test('is the closed form for one and two degrees of freedom', () => {
    expect(student975(1)).toBeCloseTo(Math.tan(Math.PI * 0.475), 7);
    expect(student975(2)).toBeCloseTo(0.95 / Math.sqrt(2 * 0.975 * 0.025), 7);
  });

  test('has 47.5 % of the density between it and zero', () => {
    for (let degrees = 2; degrees <= 120; degrees++) {
      const density = (x: number) => (1 + (x * x) / degrees) ** (-(degrees + 1) / 2);
      // Scaled by its own area: x = tan(a) brings the whole line within ±π/2. The integrand vanishes at the ends.
      const whole = integral((a) => density(Math.tan(a)) / Math.cos(a) ** 2, -1.570796, 1.570796);
      const part = integral(density, 0, student975(degrees));
      expect(part / whole).toBeCloseTo(0.475, 5);
    }
  });

  test('falls with every degree of freedom, over the end of the table too', () => {
    for (let degrees = 1; degrees <= 3 * STUDENT_975.length; degrees++) {
      expect(student975(degrees + 1)).toBeLessThan(student975(degrees));
    }
  });

  test('falls towards the normal quantile, however many degrees of freedom there are', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2000 }), (step) => {
        // From 1 to 1e20, evenly in the logarithm.
        const degrees = Math.round(10 ** (step / 100));
        const t = student975(degrees);
        expect(t).toBeGreaterThan(1.959963);
        expect(t).toBeLessThan(12.7063);
        expect(student975(Math.ceil(degrees * 1.5))).toBeLessThan(t + 1e-9);
      }),
      RUNS,
    );
  });

  test.each([0, -1, 0.5, 1.5, 100.5, Number.NaN, Number.NEGATIVE_INFINITY])('has none for %d', (degrees) => {
    expect(() => student975(degrees)).toThrow(RangeError);
  });
});

describe('the table', () => {
  test('holds the very numbers that the library gives', () => {
    expect(STUDENT_975).toEqual(STUDENT_975.map((_, i) => jstat.studentt.inv(0.975, i + 1)));
    expect(STUDENT_975).toHaveLength(100);
    expect(NORMAL_975).toBe(jstat.normal.inv(0.975, 0, 1));
  });

  test('ends where the expansion takes over without a step that shows', () => {
    for (const degrees of [101, 150, 1000, 50_000, 100_000]) {
      expect(student975(degrees)).toBeCloseTo(jstat.studentt.inv(0.975, degrees), 6);
    }
  });
});

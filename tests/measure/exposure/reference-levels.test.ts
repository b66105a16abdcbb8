import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  electricReferenceLevel,
  LOWEST_ELECTRIC_LEVEL,
  LOWEST_MAGNETIC_LEVEL,
  LOWEST_RADIO_LEVEL,
  magneticReferenceLevel,
  SLOPE_TO,
  STATED_FREQUENCIES,
} from '../../../src/measure/exposure/reference-levels.ts';
import { expectToMeet } from '../../references/check-value.ts';
import { ELECTRIC_LEVELS, MAGNETIC_LEVELS, RADIO_JOIN, RADIO_LEVELS } from '../../references/exposure.ts';
import { RUNS } from '../make.ts';

describe.each([
  ['magnetic', magneticReferenceLevel, MAGNETIC_LEVELS, [24.9, 1.0001e7]],
  ['electric', electricReferenceLevel, ELECTRIC_LEVELS, [24.9, 1.0001e7]],
] as const)('reference levels: %s', (_, levelAt, rows, outside) => {
  test.each(rows.map((row) => [row.label, row] as const))('at %s', (_label, row) => {
    expectToMeet(levelAt(row.arguments), row);
  });

  test('are refused outside their frequencies', () => {
    for (const frequency of [...outside, 0, -50, Number.NaN]) expect(() => levelAt(frequency)).toThrow(RangeError);
  });
});

describe('reference levels as a whole', () => {
  test('for electric fields never rise with the frequency', () => {
    const hertz = fc.double({ min: 25, max: 1e7, noNaN: true });
    fc.assert(
      fc.property(hertz, hertz, (a, b) => {
        expect(electricReferenceLevel(Math.max(a, b))).toBeLessThanOrEqual(electricReferenceLevel(Math.min(a, b)));
      }),
      RUNS,
    );
  });

  test('are lowest above 3 kHz, but for the step of the magnetic rows at 3 kHz itself', () => {
    const hertz = fc.double({ min: 25, max: STATED_FREQUENCIES.to, noNaN: true });
    fc.assert(
      fc.property(hertz, (f) => {
        expect(electricReferenceLevel(f)).toBeGreaterThanOrEqual(LOWEST_ELECTRIC_LEVEL);
        // 80000 / 3000 = 26.7 µT, 1.2 % under the row that starts there: the table's own rounding.
        expect(magneticReferenceLevel(f)).toBeGreaterThanOrEqual(LOWEST_MAGNETIC_LEVEL / 1.0126);
      }),
      RUNS,
    );
    expect(electricReferenceLevel(SLOPE_TO + 1)).toBe(LOWEST_ELECTRIC_LEVEL);
    expect(magneticReferenceLevel(SLOPE_TO + 1)).toBe(LOWEST_MAGNETIC_LEVEL);
  });

  test('for radio are power densities above 30 MHz, where the rows of the field strength meet', () => {
    expectToMeet(300 / RADIO_JOIN.arguments ** 0.7, RADIO_JOIN);
    expect(300 / 10 ** 0.7).toBeGreaterThan(2 * RADIO_JOIN.expected);
    // Far from a source S = E² / 377 Ω; the table rounds 2.04 to 2.
    expect(RADIO_JOIN.expected ** 2 / 377).toBeCloseTo(LOWEST_RADIO_LEVEL, 1);
  });

  test('for radio are lowest from where power densities start to 400 MHz, and five times as high above 2 GHz', () => {
    const levels = RADIO_LEVELS.map((row) => [row.arguments, row.expected] as const);
    expect(Math.min(...levels.map(([, level]) => level))).toBe(LOWEST_RADIO_LEVEL);
    for (const [megahertz, level] of levels) {
      expect(level === LOWEST_RADIO_LEVEL, `${megahertz} MHz`).toBe(megahertz <= 400);
      // So the words have it: the share would be a fifth.
      if (megahertz > 2000) expect(level / LOWEST_RADIO_LEVEL, `${megahertz} MHz`).toBe(5);
    }
  });
});

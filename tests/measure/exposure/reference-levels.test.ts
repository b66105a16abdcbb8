import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  electricReferenceLevel,
  LOWEST_RADIO_LEVEL,
  localRadioReferenceLevel,
  magneticReferenceLevel,
  radioReferenceLevel,
} from '../../../src/measure/exposure/reference-levels.ts';
import { expectToMeet } from '../../references/check-value.ts';
import { ELECTRIC_LEVELS, LOCAL_RADIO_LEVELS, MAGNETIC_LEVELS, RADIO_LEVELS } from '../../references/exposure.ts';
import { RUNS } from '../make.ts';

describe.each([
  ['magnetic', magneticReferenceLevel, MAGNETIC_LEVELS, [24.9, 1.0001e7]],
  ['electric', electricReferenceLevel, ELECTRIC_LEVELS, [24.9, 1.0001e7]],
  ['radio, whole body', radioReferenceLevel, RADIO_LEVELS, [30, 29, 300_001]],
  ['radio, local', localRadioReferenceLevel, LOCAL_RADIO_LEVELS, [2, 1.9, 300.1]],
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

  test('for the whole body never lie below the lowest one', () => {
    fc.assert(
      fc.property(fc.double({ min: 30.001, max: 300_000, noNaN: true }), (megahertz) => {
        expect(radioReferenceLevel(megahertz)).toBeGreaterThanOrEqual(LOWEST_RADIO_LEVEL);
      }),
      RUNS,
    );
  });
});

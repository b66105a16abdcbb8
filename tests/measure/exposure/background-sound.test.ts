import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  backgroundCorrection,
  energyCorrection,
  levelSensitivities,
} from '../../../src/measure/exposure/background-sound.ts';
import { expectToMeet } from '../../references/check-value.ts';
import { BACKGROUND_CORRECTIONS, ENERGY_CORRECTIONS, ENERGY_DIFFERENCE } from '../../references/exposure.ts';
import { RUNS } from '../make.ts';

describe('the correction for background sound', () => {
  test.each(ENERGY_CORRECTIONS.map((row) => [row.label, row] as const))('by the formula: %s', (_, row) => {
    expectToMeet(energyCorrection(row.arguments), row);
  });

  test('against a published example', () => {
    const { on, off } = ENERGY_DIFFERENCE.arguments;
    expectToMeet(on - energyCorrection(on - off), ENERGY_DIFFERENCE);
  });

  test.each(BACKGROUND_CORRECTIONS.map((row) => [row.label, row] as const))('as applied: %s', (_, row) => {
    expectToMeet(backgroundCorrection(row.arguments).correction, row);
  });

  test('gives an upper bound below 6 dB only', () => {
    expect([0.1, 5.99, 6, 15, 15.01].map((margin) => backgroundCorrection(margin).isUpperBound)).toEqual([
      true,
      true,
      false,
      false,
      false,
    ]);
  });

  test.each([0, -3, Number.NaN])('is refused for a margin of %s dB', (margin) => {
    expect(() => backgroundCorrection(margin)).toThrow(RangeError);
    expect(() => energyCorrection(margin)).toThrow(RangeError);
  });

  test('its sensitivities are the slopes of the corrected level, and add up to one', () => {
    const corrected = (on: number, off: number) => on - energyCorrection(on - off);
    fc.assert(
      fc.property(
        fc.double({ min: 30, max: 70, noNaN: true }),
        fc.double({ min: 6, max: 15, noNaN: true }),
        (off, margin) => {
          const on = off + margin;
          const h = 1e-4;
          const { on: onSlope, off: offSlope } = levelSensitivities(margin);
          expect(onSlope).toBeCloseTo((corrected(on + h, off) - corrected(on - h, off)) / (2 * h), 6);
          expect(offSlope).toBeCloseTo((corrected(on, off + h) - corrected(on, off - h)) / (2 * h), 6);
          expect(onSlope + offSlope).toBeCloseTo(1, 12);
        },
      ),
      RUNS,
    );
  });
});

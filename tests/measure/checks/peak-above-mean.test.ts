import { describe, expect, test } from 'vitest';
import { PEAK_TOLERANCE, peakAboveMean } from '../../../src/measure/checks/peak-above-mean.ts';
import { facts } from './facts.ts';

const flags = (peak: number | undefined, mean: number | undefined, gridPoints: ReadonlyArray<number | null> = []) =>
  peakAboveMean.run(facts({ values: { 'peak-irradiance-combined': peak, 'mean-irradiance': mean }, gridPoints }));

describe('a peak', () => {
  test('below the mean is impossible', () => {
    expect(flags(79.9, 80)).toMatchObject([
      { severity: 'impossible', concerns: ['peak-irradiance-combined', 'mean-irradiance'] },
    ]);
    expect(flags(70, 80)[0]?.finding).toEqual({ code: 'peak-below-mean', peak: 70, mean: 80 });
  });

  test('at or above the mean is nothing odd', () => {
    expect(flags(80, 80)).toEqual([]);
    expect(flags(80.1, 80)).toEqual([]);
  });

  test('that a point of the grid lies above by more than chance is doubtful', () => {
    expect(PEAK_TOLERANCE).toBe(0.03);
    expect(flags(100, 80, [70, null, 104])).toMatchObject([
      { severity: 'doubt', finding: { code: 'peak-below-grid-point', peak: 100, highest: 104 } },
    ]);
    expect(flags(100, 80, [70, null, 102.9])).toEqual([]);
    expect(flags(100, 80, [null])).toEqual([]);
  });

  test('below the mean is told of once, whatever its points', () => {
    expect(flags(70, 80, [104])).toHaveLength(1);
  });

  test('without a mean, or a mean without a peak, is not judged', () => {
    expect(flags(70, undefined)).toEqual([]);
    expect(flags(undefined, 80)).toEqual([]);
  });
});

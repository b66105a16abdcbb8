import { describe, expect, test } from 'vitest';
import { peakAboveMean } from '../../../src/measure/checks/peak-above-mean.ts';
import { facts } from './facts.ts';

const flags = (peak: number | undefined, mean: number | undefined) =>
  peakAboveMean.run(facts({ values: { 'peak-irradiance-combined': peak, 'mean-irradiance': mean } }));

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

  test('without a mean, or a mean without a peak, is not judged', () => {
    expect(flags(70, undefined)).toEqual([]);
    expect(flags(undefined, 80)).toEqual([]);
  });
});

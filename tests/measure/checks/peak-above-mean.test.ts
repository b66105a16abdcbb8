import { describe, expect, test } from 'vitest';
import { peakAboveMean } from '../../../src/measure/checks/peak-above-mean.ts';
import { gridFigures } from '../../../src/measure/irradiance/grid.ts';
import { figure, figureOf, gridOf, line, vague } from '../make.ts';
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

  test('below the mean by no more than the two scatter and are rounded is nothing odd', () => {
    const own = (value: number, name: string) =>
      figure(value, [line('meter/calibration', 0.02 * value), line(name, 0.3)]);
    const found = (peak: number) =>
      peakAboveMean.run({
        ...facts(),
        figure: (metric) => (metric === 'mean-irradiance' ? own(30.1, 'mean') : own(peak, 'peak')),
      });
    expect(found(30)).toEqual([]);
    // The meter's calibration is in both, and explains nothing of it.
    expect(found(29)).toHaveLength(1);
  });

  test('of light that is even everywhere is its mean, however the sum was rounded', () => {
    const grid = gridOf([
      [1, 1, 1],
      [1, 1, 1],
      [1, 1, 1],
    ]);
    const unnamed = gridFigures({ ...grid, instrument: undefined }, { code: 'not-measured' });
    for (const mean of [figureOf(gridFigures(grid, { code: 'not-measured' }).mean), figureOf(unnamed.mean)]) {
      const peak = mean.standardUncertainty === null ? vague(1) : figure(1);
      const found = peakAboveMean.run({ ...facts(), figure: (metric) => (metric === 'mean-irradiance' ? mean : peak) });
      expect(found).toEqual([]);
    }
  });

  test('without a mean, or a mean without a peak, is not judged', () => {
    expect(flags(70, undefined)).toEqual([]);
    expect(flags(undefined, 80)).toEqual([]);
  });
});

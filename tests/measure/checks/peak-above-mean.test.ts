import { describe, expect, test } from 'vitest';
import type { Facts } from '../../../src/measure/checks/check.ts';
import { PEAK_TOLERANCE, peakAboveMean } from '../../../src/measure/checks/peak-above-mean.ts';
import type { Figure } from '../../../src/measure/figure.ts';
import { gridFigures } from '../../../src/measure/irradiance/grid.ts';
import { figure, figureOf, gridOf, line, vague } from '../make.ts';
import { facts } from './facts.ts';

const flags = (peak: number | undefined, mean: number | undefined, gridPoints: ReadonlyArray<number | null> = []) =>
  peakAboveMean.run(facts({ values: { 'peak-irradiance-combined': peak, 'mean-irradiance': mean }, gridPoints }));

const only =
  ({ mean, peak }: Record<'mean' | 'peak', Figure>): Facts['figure'] =>
  (metric) =>
    ({ 'mean-irradiance': mean, 'peak-irradiance-combined': peak })[metric as string];

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
        ...facts({ gridPoints: [] }),
        figure: only({ mean: own(30.1, 'mean'), peak: own(peak, 'peak') }),
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
      const found = peakAboveMean.run({ ...facts({ gridPoints: [] }), figure: only({ mean, peak }) });
      expect(found).toEqual([]);
    }
  });

  test('that a point of the grid lies above by more than chance is doubtful', () => {
    expect(PEAK_TOLERANCE).toBe(0.03);
    expect(flags(100, 80, [70, null, 104])).toMatchObject([
      { severity: 'doubt', finding: { code: 'peak-below-grid-point', peak: 100, highest: 104 } },
    ]);
    expect(flags(100, 80, [70, null, 102.9])).toEqual([]);
    expect(flags(100, 80, [null])).toEqual([]);
  });

  test('is held against the points as the meter showed it, whatever its light is corrected by', () => {
    const values = { 'peak-irradiance-combined': 95, 'mean-irradiance': 80, 'mismatch-factor-combined': 0.95 };
    const found = (highest: number) => peakAboveMean.run(facts({ values, gridPoints: [highest] }));
    expect(found(100)).toEqual([]);
    expect(found(104)[0]?.finding).toMatchObject({ peak: 100, highest: 104 });
  });

  test('below the mean is told of once, whatever its points', () => {
    expect(flags(70, 80, [104])).toHaveLength(1);
  });

  test('without a mean, or a mean without a peak, is not judged', () => {
    expect(flags(70, undefined)).toEqual([]);
    expect(flags(undefined, 80)).toEqual([]);
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { NO_INSTRUMENT } from '../../../src/measure/instrument/instrument.ts';
import { radiantExposure, timeForRadiantExposure } from '../../../src/measure/irradiance/radiant-exposure.ts';
import {
  exposureEachMinuteFigure,
  timeEachJouleFigure,
} from '../../../src/measure/irradiance/radiant-exposure-figures.ts';
import { expectToMeet } from '../../references/check-value.ts';
import { EXPOSURES, TIMES } from '../../references/radiant-exposure.ts';
import { figure, line, RUNS, vague } from '../make.ts';

describe('radiant exposure and time', () => {
  test.each(EXPOSURES.map((row) => [row.label, row] as const))('%s', (_, row) => {
    expectToMeet(radiantExposure(row.arguments.irradiance, row.arguments.seconds), row);
  });

  test.each(TIMES.map((row) => [row.label, row] as const))('%s', (_, row) => {
    expectToMeet(timeForRadiantExposure(row.arguments.exposure, row.arguments.irradiance), row);
  });

  test('undo each other', () => {
    const positive = fc.double({ min: 0.01, max: 1000, noNaN: true });
    fc.assert(
      fc.property(positive, positive, (irradiance, seconds) => {
        const back = timeForRadiantExposure(radiantExposure(irradiance, seconds), irradiance);
        expect(back / seconds).toBeCloseTo(1, 10);
      }),
      RUNS,
    );
  });

  test('at no irradiance nothing arrives, ever', () => {
    expect(radiantExposure(0, 600)).toBe(0);
    expect(timeForRadiantExposure(10, 0)).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('figures for readers', () => {
  const mean = figure(50, [line('sensor', 2.5)], 'mean-irradiance', 'mW/cm²');

  test('radiant exposure in each minute', () => {
    const it = exposureEachMinuteFigure('s', mean);
    expect(it).toMatchObject({
      id: 's/radiant-exposure-minute',
      unit: 'J/cm²',
      method: { id: 'radiant-exposure', version: 2 },
      calculation: 'H = 50 mW/cm² × 60 s ÷ 1000 = 3 J/cm²',
    });
    expect(it.value).toBeCloseTo(3, 12);
    expect(it.standardUncertainty).toBeCloseTo(0.15, 12);
  });

  test('time for each joule', () => {
    const it = timeEachJouleFigure('s', mean);
    expect(it).toMatchObject({
      id: 's/time-per-joule',
      unit: 's',
      calculation: 't = 1000 × 1 J/cm² ÷ 50 mW/cm² = 20 s',
    });
    expect(it.value).toBeCloseTo(20, 12);
    expect(it.standardUncertainty).toBeCloseTo(1, 12);
    expect(it.budget[0]?.contribution).toBeLessThan(0);
  });

  test('have no uncertainty where the mean has none', () => {
    expect(exposureEachMinuteFigure('s', vague(50, NO_INSTRUMENT)).uncertaintyAbsent).toBe(NO_INSTRUMENT);
    expect(timeEachJouleFigure('s', vague(50, NO_INSTRUMENT)).uncertaintyAbsent).toBe(NO_INSTRUMENT);
  });
});

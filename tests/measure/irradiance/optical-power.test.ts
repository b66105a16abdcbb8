import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gridFigures } from '../../../src/measure/irradiance/grid.ts';
import {
  ledAreaFigure,
  opticalPowerFigure,
  peakToMeanFigure,
  sideFigure,
} from '../../../src/measure/irradiance/optical-power.ts';
import { readingFigure } from '../../../src/measure/reading.ts';
import { verbatim } from '../../../src/measure/statement.ts';
import { componentOf, figure, figureOf, gridOf, instrument, line, RUNS, slanted, vague } from '../make.ts';

const TAPE = instrument({ id: 'tape', name: 'tape', calibrationRelative: 0.001, resolution: 0.1 });
const side = (of: 'width' | 'height', value: number, edgeSetting = 0.3, tape: typeof TAPE | undefined = TAPE) =>
  sideFigure({ panel: 'lantern-40', side: of, value, edgeSetting, instrument: tape });

describe('a side of the LED field', () => {
  test('has two edges, each set within ±a on its own', () => {
    expect(componentOf(side('width', 30), '/edges').contribution).toBeCloseTo(0.3 * Math.sqrt(2 / 3), 12);
  });

  test('has the tape’s calibration and resolution', () => {
    const it = side('width', 30);
    expect(componentOf(it, '/calibration').contribution).toBeCloseTo(0.03, 12);
    expect(componentOf(it, '/resolution').contribution).toBeCloseTo(0.1 / Math.sqrt(12), 12);
    expect(it).toMatchObject({ id: 'lantern-40/field-width', unit: 'cm', basis: 'measured', unassessed: [] });
  });

  test('tells so where the tape is not named', () => {
    const it = sideFigure({ panel: 'p', side: 'height', value: 60, edgeSetting: 0.3, instrument: undefined });
    expect(it.budget).toHaveLength(1);
    expect(it.unassessed).toEqual([{ what: { code: 'tape-calibration' }, reason: { code: 'tape-not-named' } }]);
  });

  test('set exactly has no component for its edges', () => {
    expect(sideFigure({ panel: 'p', side: 'width', value: 60, edgeSetting: 0, instrument: undefined }).budget).toEqual(
      [],
    );
  });
});

describe('LED area', () => {
  test('is width times height, with its working', () => {
    const it = ledAreaFigure('lantern-40', side('width', 30), side('height', 60.5));
    expect(it).toMatchObject({
      id: 'lantern-40/led-area',
      value: 1815,
      unit: 'cm²',
      calculation: 'A = w × h = 30 cm × 60.5 cm = 1815 cm²',
      inputs: ['lantern-40/field-width', 'lantern-40/field-height'],
    });
  });

  test('adds the tape’s error of both sides and squares those of their edges', () => {
    const it = ledAreaFigure('lantern-40', side('width', 30), side('height', 60));
    expect(componentOf(it, '/calibration').contribution).toBeCloseTo(2 * 0.001 * 1800, 9);
    const edge = 0.3 * Math.sqrt(2 / 3);
    expect(componentOf(it, '/field-width/edges').contribution).toBeCloseTo(60 * edge, 9);
    expect(componentOf(it, '/field-height/edges').contribution).toBeCloseTo(30 * edge, 9);
  });
});

describe('optical power', () => {
  const mean = figure(50, [line('sensor', 2.5)], 'mean-irradiance', 'mW/cm²');
  const area = figure(1800, [line('tape', 18)], 'led-area', 'cm²');

  test('is mean irradiance times area, in W', () => {
    const it = opticalPowerFigure('lantern-40/2026-03-02', mean, area);
    expect(it).toMatchObject({
      id: 'lantern-40/2026-03-02/optical-power',
      value: 90,
      unit: 'W',
      basis: 'derived',
      method: { id: 'optical-power', version: 1 },
      calculation: 'P = Ē × A ÷ 1000 = 50 mW/cm² × 1800 cm² ÷ 1000 = 90 W',
    });
    expect((it.standardUncertainty ?? Number.NaN) / 90).toBeCloseTo(Math.hypot(0.05, 0.01), 12);
  });

  test('has no uncertainty where the mean has none', () => {
    const it = opticalPowerFigure('s', vague(50, 'the session does not name the meter'), area);
    expect(it).toMatchObject({ value: 90, standardUncertainty: null });
    expect(it.uncertaintyAbsent).toEqual(verbatim('the session does not name the meter'));
  });

  test('scales with all readings of the grid', () => {
    const values = fc.array(fc.double({ min: 1, max: 300, noNaN: true }), { minLength: 9, maxLength: 9 });
    fc.assert(
      fc.property(values, fc.double({ min: 0.1, max: 10, noNaN: true }), (readings, factor) => {
        const power = (scale: number) => {
          const grid = gridFigures(gridOf([readings.map((it) => scale * it)]), verbatim('no cells'));
          return opticalPowerFigure('s', figureOf(grid.mean), area).value;
        };
        expect(power(factor) / power(1)).toBeCloseTo(factor, 9);
      }),
      RUNS,
    );
  });
});

describe('peak over mean', () => {
  const session = 'lantern-40/2026-03-02';
  const distance = { distance: 15, halfWidth: 0.3, area: 1800 };
  const ratio = (sensor: ReturnType<typeof instrument>, peakValue: number, values: readonly number[]) => {
    const peak = readingFigure({
      metric: 'peak-irradiance-combined',
      value: peakValue,
      session,
      path: 'peak',
      instrument: sensor,
      distance,
    });
    const mean = figureOf(
      gridFigures(gridOf([values], { instrument: sensor, session, distance }), verbatim('no cells')).mean,
    );
    return peakToMeanFigure(session, peak, mean);
  };
  const reading = fc.double({ min: 5, max: 300, noNaN: true });
  const readings = fc.array(reading, { minLength: 9, maxLength: 9 });
  const share = fc.double({ min: 0, max: 0.3, noNaN: true });

  test('is a plain ratio', () => {
    const it = ratio(instrument(), 120, [80, 100, 120]);
    expect(it.value).toBeCloseTo(1.2, 12);
    expect(it.unit).toBe('1');
    expect(it.calculation).toBe('R = 120 mW/cm² ÷ 100 mW/cm² = 1.2');
  });

  test('holds no calibration of the one meter, no distance and no oblique light', () => {
    fc.assert(
      fc.property(reading, readings, share, share, (peak, values, calibrationRelative, angularResponse) => {
        const common = { resolution: 0.1, repeatability: 0.01 };
        const without = ratio(instrument(common), peak, values);
        const withAll = ratio(
          instrument({ ...common, calibrationRelative, angularResponse: slanted(angularResponse) }),
          peak,
          values,
        );
        expect(withAll.standardUncertainty).toBeCloseTo(without.standardUncertainty ?? Number.NaN, 9);
      }),
      RUNS,
    );
  });

  test('keeps the calibrations of two different meters', () => {
    const peak = figure(120, [line('one sensor', 6)]);
    const mean = figure(100, [line('another sensor', 5)]);
    const it = peakToMeanFigure(session, peak, mean);
    expect((it.standardUncertainty ?? Number.NaN) / it.value).toBeCloseTo(Math.hypot(0.05, 0.05), 12);
  });
});

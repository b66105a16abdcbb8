import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { changeFigure } from '../../src/measure/change.ts';
import { NO_INSTRUMENT, REPEATABILITY } from '../../src/measure/instrument/instrument.ts';
import { figure, line, RUNS, vague } from './make.ts';

const change = (later: Parameters<typeof changeFigure>[2], earlier: Parameters<typeof changeFigure>[3]) =>
  changeFigure('lantern-40/2026-03-02', 'optical-power-change', later, earlier);

describe('the change of a figure', () => {
  test('is in % of the earlier one', () => {
    const it = change(figure(85.5), figure(90));
    expect(it.value).toBeCloseTo(-5, 12);
    expect(it).toMatchObject({
      id: 'lantern-40/2026-03-02/optical-power-change',
      metric: 'optical-power-change',
      unit: '%',
      basis: 'derived',
      method: 'optical-power@1',
      calculation: '100 × (85.5 ÷ 90 − 1) = −5 %',
    });
    expect(change(figure(99), figure(90)).value).toBeCloseTo(10, 12);
  });

  test('of nothing is none, exactly', () => {
    const same = figure(90, [line('sensor', 4)]);
    const it = change(same, same);
    expect(it.value).toBe(0);
    expect(it.standardUncertainty).toBeCloseTo(0, 12);
  });

  test('has the interval of the change, which may lie on both sides of zero', () => {
    const it = change(figure(89, [line('later', 0.89)]), figure(90, [line('earlier', 0.9)]));
    const u = (100 * 89 * Math.hypot(0.01, 0.01)) / 90;
    expect(it.standardUncertainty).toBeCloseTo(u, 12);
    expect(it.interval95?.[0]).toBeCloseTo(it.value - 1.959964 * u, 5);
    expect(it.interval95?.[1]).toBeCloseTo(it.value + 1.959964 * u, 5);
  });

  test('keeps nothing of what both sessions share', () => {
    const share = fc.double({ min: 0, max: 0.3, noNaN: true });
    const watts = fc.double({ min: 1, max: 500, noNaN: true });
    fc.assert(
      fc.property(watts, watts, share, (later, earlier, relative) => {
        const it = change(
          figure(later, [line('sensor/calibration', relative * later)]),
          figure(earlier, [line('sensor/calibration', relative * earlier)]),
        );
        expect((it.standardUncertainty ?? Number.NaN) / (it.value + 100)).toBeLessThan(1e-12);
      }),
      RUNS,
    );
  });

  test('keeps both calibrations where the meter was calibrated in between', () => {
    const it = change(figure(90, [line('sensor@2026', 1.8)]), figure(90, [line('sensor@2025', 1.8)]));
    expect(it.standardUncertainty).toBeCloseTo(100 * Math.hypot(0.02, 0.02), 12);
  });

  test('has no uncertainty where one of the two has none', () => {
    const it = change(figure(90), vague(90, NO_INSTRUMENT));
    expect(it).toMatchObject({ value: 0, standardUncertainty: null, interval95: null });
    expect(it.uncertaintyAbsent).toBe(NO_INSTRUMENT);
  });

  test('is told without an interval where how readings scatter is not known and all else is shared', () => {
    const reason = { code: 'scatter-not-known', instrument: 'meter' } as const;
    const silent = (value: number) => ({
      ...figure(value, [line('meter@2026-01-10/calibration', 0.02 * value), line(`${value}/resolution`, 0.01)]),
      unassessed: [{ what: REPEATABILITY, reason }],
    });
    const it = change(silent(88.2), silent(90));
    expect(it.value).toBeCloseTo(-2, 12);
    expect(it).toMatchObject({ standardUncertainty: null, interval95: null, uncertaintyAbsent: reason, unit: '%' });
    // Recalibrated in between: nothing is shared.
    const later = { ...silent(88.2), budget: [line('meter@2027-01-10/calibration', 1.764)] };
    expect(change(later, silent(90)).standardUncertainty).toBeCloseTo(98 * Math.hypot(0.02, 0.02, 0.01 / 90), 9);
  });
});

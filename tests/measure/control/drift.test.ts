import jstat from 'jstat';
import { describe, expect, test } from 'vitest';
import { daysUntilUsedUp, driftOf, fittedLine } from '../../../src/measure/control/drift.ts';
import { expectToMeet } from '../../references/check-value.ts';
import { NORRIS, NORRIS_LINE } from '../../references/control-chart.ts';
import { randomNumbers } from '../random-numbers.ts';

const YEAR = 365.25;

describe('a line through points', () => {
  const line = fittedLine(NORRIS);

  test.each(NORRIS_LINE)('$label of NIST’s Norris', (row) => {
    expectToMeet(line[row.arguments], row);
  });

  test('has two degrees of freedom fewer than points', () => {
    expect(NORRIS).toHaveLength(36);
    expect(line.degreesOfFreedom).toBe(34);
  });

  test('is exact where points lie on one', () => {
    expect(
      fittedLine([
        [1, 5],
        [2, 7],
        [4, 11],
      ]),
    ).toMatchObject({ slope: 2, intercept: 3, slopeUncertainty: 0 });
  });

  test('tells how far residuals resemble their neighbours', () => {
    const alternating = fittedLine([1, -1, 1, -1, 1, -1, 1, -1].map((y, x) => [x, y]));
    expect(alternating.autocorrelation).toBeLessThan(-0.7);
    const waves = fittedLine(Array.from({ length: 40 }, (_, x) => [x, Math.sin(x / 6)]));
    expect(waves.autocorrelation).toBeGreaterThan(0.8);
  });

  test('goes through three points at least, at two places', () => {
    expect(() =>
      fittedLine([
        [1, 1],
        [2, 2],
      ]),
    ).toThrow(RangeError);
    expect(() =>
      fittedLine([
        [1, 1],
        [1, 2],
        [1, 3],
      ]),
    ).toThrow(RangeError);
  });
});

describe('a drift', () => {
  const readings = [
    [0, 40.1],
    [30, 39.9],
    [61, 40.2],
    [91, 40],
    [122, 40.1],
    [152, 39.8],
    [183, 40],
  ] as const;

  test('has an interval by Student’s t, as another library has it', () => {
    const { perYear, half, degreesOfFreedom } = driftOf(readings) ?? { perYear: 0, half: 0, degreesOfFreedom: 0 };
    const design = readings.map(([day]) => [1, day / YEAR]);
    const model = jstat.models.ols(
      readings.map(([, y]) => y),
      design,
    );
    expect(perYear).toBeCloseTo(model.coef[1], 9);
    expect(half).toBeCloseTo(jstat.studentt.inv(0.975, 5) * model.t.se[1], 9);
    expect(degreesOfFreedom).toBe(5);
  });

  test('is told where the interval leaves out nought', () => {
    expect(driftOf(readings)?.isTold).toBe(false);
    expect(driftOf(readings.map(([day, value]) => [day, value - day / 100] as const))?.isTold).toBe(true);
  });

  test('is none of a few readings, or of a short time', () => {
    expect(driftOf(readings.slice(0, 5))).toBeUndefined();
    expect(driftOf(readings.map(([day, value]) => [day / 3, value] as const))).toBeUndefined();
    expect(driftOf([])).toBeUndefined();
  });

  test('holds the truth in 95 of 100 simulations', () => {
    const draw = randomNumbers(8);
    const charts = 2000;
    let held = 0;
    for (let i = 0; i < charts; i++) {
      const drift = driftOf(Array.from({ length: 12 }, (_, k) => [30 * k, 40 - (0.5 * 30 * k) / YEAR + draw.normal()]));
      if (drift && Math.abs(drift.perYear + 0.5) <= drift.half) held += 1;
    }
    // Four standard deviations of a count.
    expect(Math.abs(held / charts - 0.95)).toBeLessThan(4 * Math.sqrt((0.95 * 0.05) / charts));
  });

  test('uses up an uncertainty after so many days, where it is told', () => {
    const drift = { perYear: -0.4, half: 0.1, degreesOfFreedom: 9, isTold: true, isCorrelated: false };
    expect(daysUntilUsedUp(drift, 1.2)).toBe(Math.round(3 * YEAR));
    expect(daysUntilUsedUp({ ...drift, isTold: false }, 1.2)).toBeUndefined();
    expect(daysUntilUsedUp(drift, 0)).toBeUndefined();
    expect(daysUntilUsedUp(drift, 4.1)).toBeUndefined();
  });
});

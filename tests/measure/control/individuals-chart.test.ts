import { describe, expect, test } from 'vitest';
import {
  D2,
  D4,
  individualsLimits,
  movingRanges,
  RUN_LENGTH,
  runLengths,
  sideBeyond,
} from '../../../src/measure/control/individuals-chart.ts';
import { expectToMeet } from '../../references/check-value.ts';
import { CHART_CONSTANTS, FLOW_RATE_LIMITS, FLOW_RATES } from '../../references/control-chart.ts';
import { integral, normalBelow, randomNumbers } from '../random-numbers.ts';

describe('constants', () => {
  test.each(CHART_CONSTANTS)('$label as tables have it', (row) => {
    expectToMeet({ d2: D2, D4 }[row.arguments], row);
  });

  test('by their definition: mean and scatter of the distance of two normal draws', () => {
    // The distance has the density of a normal value of standard deviation √2, folded at nought.
    const density = (x: number) => (2 / (2 * Math.sqrt(Math.PI))) * Math.exp(-(x * x) / 4);
    const mean = integral((x) => x * density(x), 0, 20);
    const square = integral((x) => x * x * density(x), 0, 20);
    expect(D2).toBeCloseTo(mean, 9);
    expect(D4).toBeCloseTo(1 + (3 * Math.sqrt(square - mean * mean)) / mean, 9);
  });

  test('in a simulation', () => {
    const draw = randomNumbers(3);
    let sum = 0;
    const count = 40_000;
    for (let i = 0; i < count; i++) sum += Math.abs(draw.normal() - draw.normal());
    // Its standard deviation is 0.853 / √n.
    expect(Math.abs(sum / count - D2)).toBeLessThan((4 * 0.853) / Math.sqrt(count));
  });
});

describe('limits of individual values', () => {
  const limits = individualsLimits(FLOW_RATES);

  test.each(FLOW_RATE_LIMITS)('$label of the published example', (row) => {
    expectToMeet(limits[row.arguments], row);
  });

  test('of the published example with its rounded d2, to its last digit', () => {
    const reach = (3 * limits.meanRange) / 1.128;
    expect([limits.centre - reach, limits.centre + reach].map((it) => it.toFixed(4))).toEqual(['45.8159', '55.8041']);
  });

  test('hold all of its batches', () => {
    expect(FLOW_RATES.map((it) => sideBeyond(it, limits)).filter(Boolean)).toEqual([]);
    expect(
      movingRanges(FLOW_RATES)
        .map((it) => it.toFixed(1))
        .join(' '),
    ).toBe('2.0 2.3 1.4 3.5 3.4 1.4 0.2 1.2 1.5');
  });

  test('have the range’s own limit at 3.267 mean ranges', () => {
    expect(limits.rangeUpper / limits.meanRange).toBeCloseTo(3.2665, 4);
  });

  test('are no narrower than the display’s step lets one see', () => {
    expect(individualsLimits([41, 41, 41, 41], 0.05)).toMatchObject({ centre: 41, sigma: 0.05, meanRange: 0 });
    expect(individualsLimits(FLOW_RATES, 0.05)).toEqual(limits);
  });

  test('of a single reading are none', () => {
    expect(() => individualsLimits([1])).toThrow(RangeError);
  });

  test('a value on a limit is within', () => {
    expect(sideBeyond(2, { lower: 1, upper: 2 })).toBeUndefined();
    expect(sideBeyond(2.001, { lower: 1, upper: 2 })).toBe('above');
    expect(sideBeyond(0.999, { lower: 1, upper: 2 })).toBe('below');
  });
});

describe('false alarms', () => {
  /** Share of good days beyond limits that so many days set, %; the method’s page states it. */
  function beyondByChance(first: number, charts: number): number {
    const draw = randomNumbers(first);
    // The normal integral once, and not for every chart.
    const table = Array.from({ length: 1201 }, (_, i) => normalBelow((i - 600) / 100));
    const below = (z: number) => {
      const at = Math.min(Math.max(z * 100 + 600, 0), 1199.999);
      const [low, high] = [table[Math.floor(at)] ?? 0, table[Math.floor(at) + 1] ?? 1];
      return low + (high - low) * (at % 1);
    };
    let sum = 0;
    for (let i = 0; i < charts; i++) {
      const { lower, upper } = individualsLimits(Array.from({ length: first }, draw.normal));
      sum += below(lower) + 1 - below(upper);
    }
    return (100 * sum) / charts;
  }

  test.each([
    [5, 5.7],
    [8, 3.1],
    [10, 2.3],
    [20, 1.1],
    [30, 0.8],
  ])('of limits from %i days: %d %%', (first, stated) => {
    expect(Math.abs(beyondByChance(first, 4000) - stated)).toBeLessThan(0.35 * Math.sqrt(stated / 2));
  });

  test('of limits that are known: one in 370', () => {
    expect(1 / (2 * (1 - normalBelow(3)))).toBeCloseTo(370.4, 1);
  });

  test('of a run about a centre line that is known: one day in 256 is its ninth or later', () => {
    const draw = randomNumbers(21);
    const values = Array.from({ length: 100_000 }, draw.normal);
    const share = runLengths(values, 0).filter((it) => it >= RUN_LENGTH).length / values.length;
    expect(RUN_LENGTH).toBe(9);
    // By definition: eight more on the side of the first. Days of a run go together, so the scatter is wide.
    expect(Math.abs(share - 0.5 ** 8)).toBeLessThan(0.001);
  });
});

describe('runs', () => {
  test('count those in a row on one side', () => {
    expect(runLengths([1, 2, 1, -1, -2, 3], 0)).toEqual([1, 2, 3, 1, 2, 1]);
  });

  test('end at a value on the centre line, and at none', () => {
    expect(runLengths([1, 0, 1, 1], 0)).toEqual([1, 0, 1, 2]);
    expect(runLengths([], 0)).toEqual([]);
  });
});

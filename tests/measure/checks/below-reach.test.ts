import { describe, expect, test } from 'vitest';
import { belowReach } from '../../../src/measure/checks/below-reach.ts';
import type { InstrumentUse } from '../../../src/measure/checks/check.ts';
import { figure } from '../make.ts';
import { facts } from './facts.ts';

const mains: InstrumentUse = {
  kind: 'mains',
  name: 'wattmeter',
  lowest: 0.1,
  step: 0.1,
  metrics: ['mains-draw-standby'],
};
const standby = (value: number) =>
  belowReach.run(facts({ values: { 'mains-draw-standby': value }, instruments: [mains] }));

describe('a reading', () => {
  test('under the lowest of its meter is a bound, not at it', () => {
    expect(standby(0.1)).toEqual([]);
    expect(standby(0.09)).toMatchObject([{ severity: 'doubt', concerns: ['mains-draw-standby'] }]);
    expect(standby(0)[0]?.finding).toEqual({
      code: 'reading-below-reach',
      value: 0,
      unit: 'W',
      instrument: 'wattmeter',
      lowest: 0.1,
    });
    expect(standby(0)[0]?.hint).toEqual({ code: 'write-a-bound', lowest: 0.1 });
  });

  test('that is written as a bound is right', () => {
    const bounded = {
      ...facts({ instruments: [mains] }),
      figure: () => ({ ...figure(0.05, [], 'mains-draw-standby', 'W'), bound: 'below' as const }),
    };
    expect(belowReach.run(bounded)).toEqual([]);
  });

  test('of the grid: its lowest point', () => {
    const grid = (lowest: number) =>
      belowReach.run(
        facts({
          gridPoints: [30, null, lowest, 31],
          instruments: [{ kind: 'irradiance', name: 'thermopile', lowest: 1, step: 0.1, metrics: ['mean-irradiance'] }],
        }),
      );
    expect(grid(1)).toEqual([]);
    expect(grid(0.9)).toMatchObject([
      {
        finding: { code: 'reading-below-reach', value: 0.9, unit: 'mW/cm²', instrument: 'thermopile', lowest: 1 },
        hint: { code: 'look-at-unit-and-range' },
        concerns: ['mean-irradiance'],
      },
    ]);
  });

  test('of flicker that looks like a fraction is told of once, by the other check', () => {
    const flicker = (value: number) =>
      belowReach.run(
        facts({
          values: { 'flicker-red': value },
          instruments: [{ kind: 'flicker', name: 'sampler', lowest: 0.5, step: 0.1, metrics: ['flicker-red'] }],
        }),
      );
    expect(flicker(0.14)).toEqual([]);
    expect(flicker(0)).toHaveLength(1);
  });

  test('of a meter that is not named or has no lowest is not judged', () => {
    for (const part of [{ name: undefined }, { lowest: undefined }])
      expect(
        belowReach.run(facts({ values: { 'mains-draw-standby': 0 }, instruments: [{ ...mains, ...part }] })),
      ).toEqual([]);
  });
});

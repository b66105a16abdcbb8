import { describe, expect, test } from 'vitest';
import { benchDistance } from '../../../src/measure/checks/bench-distance.ts';
import type { DistanceOf } from '../../../src/measure/checks/check.ts';
import { facts } from './facts.ts';

const flags = (value: number, { of = 'claim', reference = 15.24 }: { of?: DistanceOf; reference?: number } = {}) =>
  benchDistance.run(
    facts({
      reference,
      distances: [{ of, value, at: ['session', 'distance'], concerns: ['mean-irradiance'] }],
    }),
  );

describe('a distance that was set', () => {
  test('of 6 cm where the guide has 6 in: inches were meant', () => {
    const [flag] = flags(6);
    expect(flag).toMatchObject({ severity: 'doubt', concerns: ['mean-irradiance'], at: ['session', 'distance'] });
    expect(flag?.finding).toEqual({ code: 'distance-of-inches', of: 'claim', value: 6, reference: 15.24 });
    expect(flag?.hint).toEqual({ code: 'inches-for-centimetres', value: 6 });
  });

  // 6 in are 15.24 cm; two per cent of that either way are 5.88 and 6.12 as a number of inches.
  test.each([
    [5.87, 0],
    [5.89, 1],
    [6.11, 1],
    [6.13, 0],
    [8, 0],
    [15.24, 0],
  ])('%s cm: flags %s time(s)', (value, count) => {
    expect(flags(value)).toHaveLength(count);
  });

  test('goes by the guide’s own distance: 12 in', () => {
    expect(flags(12, { reference: 30.48 })).toHaveLength(1);
    expect(flags(6, { reference: 30.48 })).toEqual([]);
  });

  test('of the bench is odd under 10 cm, not at it', () => {
    expect(flags(9.9, { of: 'bench' })).toMatchObject([
      { finding: { code: 'bench-too-near', value: 9.9, nearest: 10 }, hint: { code: 'inches-for-centimetres' } },
    ]);
    expect(flags(10, { of: 'bench' })).toEqual([]);
    expect(flags(9.9)).toEqual([]);
  });
});

import { describe, expect, test } from 'vitest';
import { benchDistance } from '../../../src/measure/checks/bench-distance.ts';
import { facts } from './facts.ts';

const flags = (value: number, part: { isBench?: boolean; reference?: number } = {}) =>
  benchDistance.run(
    facts({
      reference: part.reference ?? 15.24,
      distances: [{ what: 'The distance', value, at: ['session', 'distance'], concerns: ['mean-irradiance'], ...part }],
    }),
  );

describe('a distance that was set', () => {
  test('of 6 cm where the guide has 6 in: inches were meant', () => {
    const [flag] = flags(6);
    expect(flag).toMatchObject({ severity: 'doubt', concerns: ['mean-irradiance'], at: ['session', 'distance'] });
    expect(flag?.finding).toContain("6 cm; the guide's own is 15.2 cm, which is 6 in");
    expect(flag?.hint).toContain('write `6 in`');
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
    expect(flags(9.9, { isBench: true })).toHaveLength(1);
    expect(flags(10, { isBench: true })).toEqual([]);
    expect(flags(9.9)).toEqual([]);
  });
});

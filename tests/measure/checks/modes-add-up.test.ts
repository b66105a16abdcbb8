import { describe, expect, test } from 'vitest';
import { MODES_TOLERANCE, modesAddUp } from '../../../src/measure/checks/modes-add-up.ts';
import { facts } from './facts.ts';

const flags = (combined?: number, red?: number, infrared?: number) =>
  modesAddUp.run(
    facts({
      values: {
        'peak-irradiance-combined': combined,
        'peak-irradiance-red': red,
        'peak-irradiance-near-infrared': infrared,
      },
    }),
  );

describe('red and near-infrared', () => {
  test('within 15 % of both together are nothing odd', () => {
    expect(MODES_TOLERANCE).toBe(0.15);
    expect(flags(100, 60, 40)).toEqual([]);
    expect(flags(100, 60, 55)).toEqual([]);
    expect(flags(100, 45, 40)).toEqual([]);
  });

  test('further off are doubtful, on either side', () => {
    expect(flags(100, 60, 55.1)).toMatchObject([{ severity: 'doubt' }]);
    expect(flags(100, 45, 39.9)).toMatchObject([{ severity: 'doubt' }]);
    const finding = (infrared: number) => flags(100, 40, infrared)[0]?.finding;
    expect(finding(80)).toEqual({ code: 'modes-not-adding-up', sum: 120, combined: 100, percent: 20 });
    expect(finding(40)).toEqual({ code: 'modes-not-adding-up', sum: 80, combined: 100, percent: -20 });
    expect(flags(100, 40, 40)[0]?.concerns).toHaveLength(3);
  });

  test('are not added up where one of the three is missing', () => {
    expect(flags(undefined, 60, 90)).toEqual([]);
    expect(flags(100, undefined, 90)).toEqual([]);
    expect(flags(100, 60, undefined)).toEqual([]);
  });
});

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
    expect(flags(100, 60, 60)[0]?.finding).toContain('add up to 120 mW/cm², 20 % above the 100 mW/cm²');
    expect(flags(100, 40, 40)[0]?.finding).toContain('add up to 80 mW/cm², 20 % below the 100 mW/cm²');
    expect(flags(100, 40, 40)[0]?.concerns).toHaveLength(3);
  });

  test('are not added up where one of the three is missing', () => {
    expect(flags(undefined, 60, 90)).toEqual([]);
    expect(flags(100, undefined, 90)).toEqual([]);
    expect(flags(100, 60, undefined)).toEqual([]);
  });
});

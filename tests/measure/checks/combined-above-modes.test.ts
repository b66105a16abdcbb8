import { describe, expect, test } from 'vitest';
import { combinedAboveModes } from '../../../src/measure/checks/combined-above-modes.ts';
import { facts } from './facts.ts';

const flags = (combined?: number, red?: number, infrared?: number) =>
  combinedAboveModes.run(
    facts({
      values: {
        'peak-irradiance-combined': combined,
        'peak-irradiance-red': red,
        'peak-irradiance-near-infrared': infrared,
      },
    }),
  );

describe('both channels together', () => {
  test('below one of them alone are doubtful', () => {
    expect(flags(100, 100.1, 50)).toMatchObject([
      { severity: 'doubt', concerns: ['peak-irradiance-combined', 'peak-irradiance-red'] },
    ]);
    expect(flags(100, 50, 120)).toMatchObject([
      { concerns: ['peak-irradiance-combined', 'peak-irradiance-near-infrared'] },
    ]);
    expect(flags(100, 50, 120)[0]?.finding).toEqual({
      code: 'combined-below-mode',
      combined: 100,
      mode: 'near-infrared',
      alone: 120,
    });
  });

  test('below each of them raise a flag for each', () => {
    expect(flags(100, 110, 120)).toHaveLength(2);
  });

  test('at or above each of them are nothing odd', () => {
    expect(flags(100, 100, 100)).toEqual([]);
    expect(flags(100, 99.9, 20)).toEqual([]);
  });

  test('are judged by the channels that were read', () => {
    expect(flags(100, undefined, 120)).toHaveLength(1);
    expect(flags(100)).toEqual([]);
    expect(flags(undefined, 110, 120)).toEqual([]);
  });
});

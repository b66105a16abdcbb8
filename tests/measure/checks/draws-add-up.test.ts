import { describe, expect, test } from 'vitest';
import { DRAWS_TOLERANCE, drawsAddUp } from '../../../src/measure/checks/draws-add-up.ts';
import { facts } from './facts.ts';

const flags = (combined?: number, red?: number, infrared?: number, standby?: number) =>
  drawsAddUp.run(
    facts({
      values: {
        'mains-draw-combined': combined,
        'mains-draw-red': red,
        'mains-draw-near-infrared': infrared,
        'mains-draw-standby': standby,
      },
    }),
  );

describe('mains draws', () => {
  test('of both channels far above the two added up are doubtful', () => {
    expect(DRAWS_TOLERANCE).toBe(0.2);
    expect(flags(1042, 52.8, 53.9, 0.7)).toMatchObject([
      { severity: 'doubt', finding: { code: 'draws-not-adding-up', combined: 1042, sum: 52.8 + 53.9 } },
    ]);
    expect(flags(121, 50, 50)).toHaveLength(1);
    expect(flags(120, 50, 50)).toEqual([]);
  });

  test('of both channels below one of them alone are doubtful', () => {
    expect(flags(10.4, 52.8, 5)).toMatchObject([
      { finding: { code: 'draw-below-channel', combined: 10.4, mode: 'red', alone: 52.8 } },
    ]);
    expect(flags(52.8, 52.8, 52.8)).toEqual([]);
  });

  test('in standby that are no less than a lit panel’s are doubtful', () => {
    expect(flags(104, 52.8, 53.9, 70)).toMatchObject([
      {
        severity: 'doubt',
        finding: { code: 'standby-above-draw', standby: 70, on: 52.8 },
        concerns: ['mains-draw-standby', 'mains-draw-red'],
      },
    ]);
    expect(flags(104, undefined, undefined, 104)).toHaveLength(1);
    expect(flags(104, undefined, undefined, 103)).toEqual([]);
  });

  test('that were not read are not judged', () => {
    expect(flags(1042, 52.8)).toEqual([]);
    expect(flags(undefined, undefined, undefined, 5)).toEqual([]);
  });
});

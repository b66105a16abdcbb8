import { describe, expect, test } from 'vitest';
import { SHORTEST_WARM_UP, warmUpTime } from '../../../src/measure/checks/warm-up-time.ts';
import { facts } from './facts.ts';

const flags = (warmUp: number | undefined) => warmUpTime.run(facts({ warmUp }));

describe('a warm-up', () => {
  // Minutes that testers take, typed without their unit.
  test.each([20, 30, 40, 45, 60, 90])('of %s s is doubted: minutes were meant', (seconds) => {
    expect(flags(seconds)).toMatchObject([
      {
        severity: 'doubt',
        finding: { code: 'warm-up-short', warmUp: seconds, shortest: 300 },
        hint: { code: 'minutes-for-seconds', value: seconds },
        at: ['session', 'warmUp'],
      },
    ]);
  });

  test('is taken from five minutes on, and doubted below', () => {
    expect(SHORTEST_WARM_UP).toBe(5 * 60);
    expect(flags(300)).toEqual([]);
    expect(flags(299)).toHaveLength(1);
    expect(flags(20 * 60)).toEqual([]);
  });

  test('of nothing at all is doubted; one that was not noted down is not', () => {
    expect(flags(0)).toHaveLength(1);
    expect(flags(undefined)).toEqual([]);
  });
});

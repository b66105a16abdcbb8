import { describe, expect, test } from 'vitest';
import { flickerFraction, USUAL_STEP } from '../../../src/measure/checks/flicker-fraction.ts';
import { figure } from '../make.ts';
import { facts } from './facts.ts';

const flags = (value: number, instrument: { lowest?: number; step?: number } = { lowest: 0.5, step: 0.1 }) =>
  flickerFraction.run(
    facts({
      values: { 'flicker-combined': value },
      instruments: [{ kind: 'flicker', name: 'sampler', metrics: ['flicker-combined'], ...instrument }],
    }),
  );

describe('a flicker reading', () => {
  test('of 0.14 % by a meter that shows 0.5 % at least: says both ways to write it', () => {
    const [flag] = flags(0.14);
    expect(flag).toMatchObject({ severity: 'doubt', concerns: ['flicker-combined'] });
    expect(flag?.finding).toEqual({
      code: 'flicker-odd',
      percent: 0.14,
      instrument: 'sampler',
      limit: 'lowest',
      limitPercent: 0.5,
    });
    expect(flag?.hint).toEqual({ code: 'percent-for-fraction', percent: expect.closeTo(14, 9), lowest: 0.5 });
  });

  test.each([
    [0.5, 0],
    [0.49, 1],
    [0.9, 0],
    [0.95, 1],
    [1, 0],
    [14, 0],
    [0, 0],
  ])('of %s %% with steps of 0.1 from 0.5: flags %s time(s)', (value, count) => {
    expect(flags(value)).toHaveLength(count);
  });

  test('of 0.14 % is taken from a meter that can show it', () => {
    expect(flags(0.14, { lowest: 0.01, step: 0.01 })).toEqual([]);
    expect(flags(0.145, { lowest: 0.01, step: 0.01 })).toMatchObject([
      { finding: { limit: 'step', limitPercent: 0.01 }, hint: { lowest: 0.01 } },
    ]);
  });

  test('without a meter: a tenth of a per cent is what meters show', () => {
    const named = (value: number) =>
      flickerFraction.run(
        facts({
          values: { 'flicker-red': value },
          instruments: [{ kind: 'flicker', name: undefined, metrics: ['flicker-red'] }],
        }),
      );
    expect(named(0.14)).toMatchObject([
      {
        finding: { instrument: undefined, limit: 'step', limitPercent: USUAL_STEP },
        hint: { code: 'percent-for-fraction', lowest: USUAL_STEP },
      },
    ]);
    expect(named(0.1)).toEqual([]);
  });

  test('a bound is none', () => {
    const bounded = {
      ...facts({
        instruments: [{ kind: 'flicker', name: 'sampler', lowest: 0.5, step: 0.1, metrics: ['flicker-red'] }],
      }),
      figure: () => ({ ...figure(0.14, [], 'flicker-red', '%'), bound: 'below' as const }),
    };
    expect(flickerFraction.run(bounded)).toEqual([]);
  });
});

import { describe, expect, test } from 'vitest';
import { isUnderNoEffectLine } from '../../../src/measure/exposure/no-effect.ts';
import { type Figure, type FigureOrGap, gap } from '../../../src/measure/figure.ts';
import { figure, line } from '../make.ts';

const depth = (value: number, u = 0) => figure(value, u ? [line('meter', u)] : [], 'flicker-red', '%');
const hertz = (value: number): Figure => figure(value, [], 'flicker-frequency-red', 'Hz');
const none = gap('x', 'not measured');

describe('flicker beside the line of no observable effect', () => {
  test.each<[FigureOrGap, FigureOrGap, boolean | undefined]>([
    // 0.0333 x 100 = 3.33 %.
    [depth(3.3), hertz(100), true],
    [depth(3.4), hertz(100), false],
    // The cautious end of 3.2 with u = 0.1 is 3.4.
    [depth(3.2, 0.1), hertz(100), false],
    [depth(80), hertz(3001), true],
    [depth(0), none, true],
    [depth(4), none, undefined],
    [none, hertz(100), undefined],
  ])('case %#', (of, at, wanted) => {
    expect(isUnderNoEffectLine(of, at)).toBe(wanted);
  });

  test('a bound from below the meter’s reach is its bound', () => {
    expect(isUnderNoEffectLine({ ...depth(0.5), bound: 'below' }, none)).toBe(true);
    expect(isUnderNoEffectLine({ ...depth(3), bound: 'below' }, hertz(100))).toBe(true);
    expect(isUnderNoEffectLine({ ...depth(3), bound: 'above' }, hertz(100))).toBe(false);
  });
});

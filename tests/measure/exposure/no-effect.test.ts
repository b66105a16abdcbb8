import { describe, expect, test } from 'vitest';
import {
  type BesideNoEffect,
  besideNoEffectLine,
  panelBesideNoEffectLine,
} from '../../../src/measure/exposure/no-effect.ts';
import { type Figure, type FigureOrGap, gap } from '../../../src/measure/figure.ts';
import { verbatim } from '../../../src/measure/statement.ts';
import { figure, line } from '../make.ts';

const depth = (value: number, u = 0) => figure(value, u ? [line('meter', u)] : [], 'flicker-red', '%');
const hertz = (value: number): Figure => figure(value, [], 'flicker-frequency-red', 'Hz');
const none = gap('flicker-combined', verbatim('not measured'));

describe('flicker beside the line of no observable effect', () => {
  test.each<[FigureOrGap, FigureOrGap, BesideNoEffect | undefined]>([
    // 0.0333 x 100 = 3.33 %.
    [depth(3.33), hertz(100), 'under'],
    [depth(3.34), hertz(100), 'above'],
    // The cautious end of 3.2 with u = 0.1 is 3.4.
    [depth(3.2, 0.1), hertz(100), 'above'],
    // 0.0333 x 3000 = 99.9 % is the last line there is.
    [depth(99.8), hertz(3000), 'under'],
    [depth(80), hertz(3000.1), 'no-line'],
    [depth(0.1), hertz(40_000), 'no-line'],
    [none, hertz(100), undefined],
    [none, hertz(40_000), undefined],
  ])('case %#', (of, at, wanted) => {
    expect(besideNoEffectLine(of, at)).toBe(wanted);
  });

  test('is not known without a known frequency, however small the depth', () => {
    // At 10 Hz the line lies at 0.1 %: "below 0.5 %" may be five times as deep.
    for (const small of [depth(0), depth(4), { ...depth(0.5), bound: 'below' as const }]) {
      expect(besideNoEffectLine(small, none)).toBeUndefined();
      expect(besideNoEffectLine(small, { ...hertz(2000), bound: 'above' })).toBeUndefined();
    }
  });

  test('a bound is its bound', () => {
    expect(besideNoEffectLine({ ...depth(3), bound: 'below' }, hertz(100))).toBe('under');
    expect(besideNoEffectLine({ ...depth(3), bound: 'above' }, hertz(100))).toBe('above');
  });
});

describe('a panel', () => {
  test.each<[BesideNoEffect | undefined, BesideNoEffect | undefined | 'not-read', BesideNoEffect | undefined]>([
    ['under', 'not-read', 'under'],
    ['no-line', 'not-read', 'no-line'],
    [undefined, 'not-read', undefined],
    ['under', 'under', 'under'],
    ['no-line', 'no-line', 'no-line'],
    // One mode has a line and lies under it.
    ['no-line', 'under', 'under'],
    // One above is enough; one that is not known leaves it open.
    ['under', 'above', 'above'],
    [undefined, 'above', 'above'],
    ['under', undefined, undefined],
    [undefined, 'under', undefined],
  ])('with both channels %s and red %s', (combined, red, wanted) => {
    expect(panelBesideNoEffectLine(combined, red)).toBe(wanted);
  });
});

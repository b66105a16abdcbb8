import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sentenceOf } from '../../../src/measure/exposure/limit.ts';
import { soundFigure, soundResult } from '../../../src/measure/exposure/sound-result.ts';
import { type FigureOrGap, gap, isFigure } from '../../../src/measure/figure.ts';
import { expectToMeet } from '../../references/check-value.ts';
import { SOUND_LEVELS } from '../../references/exposure.ts';
import { figure, figureOf, line, RUNS, vague } from '../make.ts';

const level = (value: number, state: 'on' | 'off', shared = 1) =>
  figure(value, [line('calibration', shared), line(`${state}/resolution`, 0.1)], `sound-${state}`, 'dB(A)');
const panel = (on: FigureOrGap, off: FigureOrGap, distance?: string) => soundFigure('p/d', { on, off, distance });
const at = (on: number, off: number) => panel(level(on, 'on'), level(off, 'off'));
const bounded = (value: number, bound: 'below' | 'above') => ({
  ...vague(value, 'the reading is a bound'),
  unit: 'dB(A)' as const,
  bound,
});

describe('the sound of the panel alone', () => {
  test.each(SOUND_LEVELS.map((row) => [row.label, row] as const))('%s', (_, row) => {
    expectToMeet(figureOf(at(row.arguments.on, row.arguments.off)).value, row);
  });

  test('moves with the calibration by one: both readings share it', () => {
    const it = figureOf(at(50, 40));
    expect(it).toMatchObject({
      id: 'p/d/sound-of-panel',
      unit: 'dB(A)',
      basis: 'derived',
      method: { id: 'sound-of-panel', version: 1 },
    });
    expect(it.budget.find((entry) => entry.source.key === 'calibration')?.contribution).toBeCloseTo(1, 12);
    // 1 / (1 - 10^-1) = 10/9
    expect(it.budget.find((entry) => entry.source.key === 'on/resolution')?.contribution).toBeCloseTo(0.1 / 0.9, 12);
    expect(it.budget.find((entry) => entry.source.key === 'off/resolution')?.contribution).toBeCloseTo(-0.1 / 9, 12);
    expect(it.calculation).toBe('L = 10 lg(10^(50/10) − 10^(40/10)) = 50 dB(A) − 0.4576 dB = 49.54 dB(A)');
  });

  test('above a margin of 15 dB is the reading itself; at 15 dB, also of decimals, it is corrected', () => {
    const it = figureOf(at(50, 34.9));
    expect(it.value).toBe(50);
    expect(it.budget.find((entry) => entry.source.key === 'off/resolution')?.contribution ?? 0).toBeCloseTo(0, 12);
    expect(figureOf(at(50, 35)).value).toBeCloseTo(50 - 0.139554, 5);
    // 45.2 - 30.2 is a little more than 15 in floating point.
    expect(45.2 - 30.2).not.toBe(15);
    expect(figureOf(at(45.2, 30.2)).value).toBeCloseTo(45.2 - 0.139554, 5);
  });

  test('below a margin of 6 dB is an upper bound, 1.3 dB under the reading', () => {
    expect(figureOf(at(46, 40)).bound).toBeUndefined();
    const it = figureOf(at(45.9, 40));
    expect(it).toMatchObject({ bound: 'below', standardUncertainty: null });
    expect(it.value).toBeCloseTo(44.6, 12);
    expect(it.uncertaintyAbsent).toContain('only an upper bound is known');
  });

  test('as loud as the room or quieter: a gap that says at most how much', () => {
    for (const off of [40, 41]) {
      expect(at(40, off)).toEqual(gap('sound-of-panel', 'not distinguishable from the room: at most 40 dB(A)'));
    }
  });

  test('in a room that is only known to be below a bound: the reading is an upper bound', () => {
    const it = figureOf(panel(level(38, 'on'), bounded(30, 'below')));
    expect(it).toMatchObject({ value: 38, bound: 'below' });
    expect(it.calculation).toContain('L ≤ L_on = 38 dB(A)');
  });

  test.each([
    ['the reading is a bound', bounded(30, 'below'), level(25, 'off'), 'only a bound, below 30 dB(A)'],
    ['the room was beyond the meter', level(50, 'on'), bounded(130, 'above'), 'louder than the meter reads'],
    ['the room was not read', level(50, 'on'), gap('sound-off', 'not measured'), 'can’t be taken off: not measured'],
    ['nothing was read', gap('sound-on', 'not measured'), level(25, 'off'), 'not measured'],
  ] as const)('is a gap where %s', (_, on, off, reason) => {
    const it = panel(on, off);
    expect(isFigure(it) ? 'a figure' : it.reason).toContain(reason);
  });

  test('never exceeds the reading, and rises with it', () => {
    const decibels = fc.double({ min: 20, max: 100, noNaN: true });
    fc.assert(
      fc.property(decibels, decibels, fc.double({ min: 0, max: 5, noNaN: true }), (on, off, more) => {
        const [first, second] = [at(on, off), at(on + more, off)];
        if (!isFigure(first) || !isFigure(second)) return;
        expect(first.value).toBeLessThanOrEqual(on);
        expect(Number.isFinite(first.value)).toBe(true);
        // The standard steps by 0.04 dB at 6 dB, upwards, and by 0.14 dB at 15 dB, upwards too.
        expect(second.value).toBeGreaterThanOrEqual(first.value - 1e-9);
      }),
      RUNS,
    );
  });
});

describe('what is said of the sound', () => {
  const sentence = (on: FigureOrGap, off: FigureOrGap, distance?: string) =>
    sentenceOf(soundResult('p/d', { on, off, distance }));

  test('has both readings, the place, and that it is no sound power', () => {
    const text = sentence(level(50, 'on'), level(40, 'off'), '1 m');
    expect(text).toContain('the level was 50 dB(A); with it off, 40 dB(A); read at 1 m.');
    expect(text).toContain('The panel alone gives 49.5 dB(A), at the cautious end of the interval 51.6 dB(A).');
    expect(text).toContain('It is a level at a point, not a sound power.');
    expect(text).toContain('ISO 3744, 2010 edition (seen in secondary sources only)');
    expect(sentence(level(50, 'on'), level(40, 'off'))).toContain('the distance is not recorded');
    expect(soundResult('p/d', { on: level(50, 'on'), off: level(40, 'off'), distance: '1 m' })).toMatchObject({
      limit: undefined,
      caution: 'sound',
    });
  });

  test('moves an upper bound by the doubt in the reading', () => {
    // 45 - 1.3 = 43.7, and 1.96 · 1.005 more
    expect(sentence(level(45, 'on'), level(41, 'off'))).toContain(
      'at most 43.7 dB(A), at the cautious end of the interval of the reading at most 45.7 dB(A)',
    );
    const vagueOn = { ...vague(45), unit: 'dB(A)' as const };
    expect(sentence(vagueOn, level(41, 'off'))).toContain('for its uncertainty is not known');
  });

  test('of a gap gives its reason', () => {
    expect(sentence(level(40, 'on'), level(40, 'off'))).toContain(
      'not distinguishable from the room: at most 40 dB(A).',
    );
  });
});

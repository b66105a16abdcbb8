import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { soundFigure, soundResult } from '../../../src/measure/exposure/sound-result.ts';
import { type FigureOrGap, gap, isFigure } from '../../../src/measure/figure.ts';
import { expectToMeet } from '../../references/check-value.ts';
import { SOUND_LEVELS } from '../../references/exposure.ts';
import { soundLevel } from '../../support/exposure-readings.ts';
import { figureOf, RUNS, vague } from '../make.ts';

const NOT_READ = gap('sound-on', { code: 'not-measured' });
const panel = (on: FigureOrGap, off: FigureOrGap, distance?: string) => soundFigure('p/d', { on, off, distance });
const at = (on: number, off: number) => panel(soundLevel(on, 'on'), soundLevel(off, 'off'));
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
    expect(it.uncertaintyAbsent).toEqual({ code: 'sound-room-too-loud' });
    expect(it.calculation).toBe('ΔL = 5.9 dB < 6 dB: L ≤ 45.9 dB(A) − 1.3 dB = 44.6 dB(A)');
  });

  test('as loud as the room or quieter: a gap that says at most how much', () => {
    for (const off of [40, 41]) {
      expect(at(40, off)).toEqual(gap('sound-of-panel', { code: 'sound-not-told-from-room', atMost: 40 }));
    }
  });

  test('in a room that is only known to be below a bound: the reading is an upper bound', () => {
    const it = figureOf(panel(soundLevel(38, 'on'), bounded(30, 'below')));
    expect(it).toMatchObject({ value: 38, bound: 'below' });
    expect(it.calculation).toEqual({ code: 'sound-quiet-room-equation', on: 38, room: 30 });
    expect(it.uncertaintyAbsent).toEqual({ code: 'sound-room-too-quiet' });
  });

  test.each([
    [
      'the reading is a bound',
      bounded(30, 'below'),
      soundLevel(25, 'off'),
      { code: 'sound-on-a-bound', level: 30, bound: 'below' },
    ],
    ['the room was beyond the meter', soundLevel(50, 'on'), bounded(130, 'above'), { code: 'sound-room-beyond-reach' }],
    [
      'the room was not read',
      soundLevel(50, 'on'),
      NOT_READ,
      { code: 'sound-room-unknown', because: { code: 'not-measured' } },
    ],
    ['nothing was read', NOT_READ, soundLevel(25, 'off'), { code: 'not-measured' }],
  ] as const)('is a gap where %s', (_, on, off, reason) => {
    expect(panel(on, off)).toEqual(gap('sound-of-panel', reason));
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

describe('as a result', () => {
  test('an upper bound moves by the doubt in the reading, and is held against no limit', () => {
    const result = soundResult('p/d', { on: soundLevel(45, 'on'), off: soundLevel(41, 'off'), distance: '1 m' });
    expect(result).toMatchObject({ hazard: 'sound', limit: undefined });
    // 45 - 1.3 = 43.7, and 1.96 · 1.005 more
    expect(result.atMost).toBeCloseTo(43.7 + 1.959964 * Math.hypot(1, 0.1), 5);
  });

  test('nothing moves what is no bound, or whose reading has no interval', () => {
    const atMost = (on: FigureOrGap, off: FigureOrGap) => soundResult('p/d', { on, off, distance: undefined }).atMost;
    expect(atMost(soundLevel(50, 'on'), soundLevel(40, 'off'))).toBeUndefined();
    expect(atMost({ ...vague(45), unit: 'dB(A)' }, soundLevel(41, 'off'))).toBeUndefined();
    expect(atMost(soundLevel(40, 'on'), soundLevel(40, 'off'))).toBeUndefined();
  });
});

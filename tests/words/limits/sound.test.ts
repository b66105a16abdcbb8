import { describe, expect, test } from 'vitest';
import { soundFigure, soundResult } from '../../../src/measure/exposure/sound-result.ts';
import { type FigureOrGap, gap } from '../../../src/measure/figure.ts';
import { figureOf, told, vague } from '../../measure/make.ts';
import { soundLevel } from '../../support/exposure-readings.ts';
import { sentenceOf } from '../../support/sentence-of.ts';

const bounded = (value: number, bound: 'below' | 'above') => ({
  ...vague(value, 'the reading is a bound'),
  unit: 'dB(A)' as const,
  bound,
});

describe('what is said of the sound', () => {
  const sentence = (on: FigureOrGap, off: FigureOrGap, distance?: string) =>
    sentenceOf(soundResult('p/d', { on, off, distance }));

  test('has both readings, the place, and that it is no sound power', () => {
    const text = sentence(soundLevel(50, 'on'), soundLevel(40, 'off'), '1 m');
    expect(text).toContain('the level was 50 dB(A); with it off, 40 dB(A); read at 1 m.');
    expect(text).toContain('The panel alone gives 49.5 dB(A), at the cautious end of the interval 51.6 dB(A).');
    expect(text).toContain('It is a level at a point, not a sound power.');
    expect(text).toContain('ISO 3744, 2010 edition (seen in secondary sources only)');
    expect(sentence(soundLevel(50, 'on'), soundLevel(40, 'off'))).toContain('the distance is not recorded');
  });

  test('moves an upper bound by the doubt in the reading', () => {
    // 45 - 1.3 = 43.7, and 1.96 · 1.005 more
    expect(sentence(soundLevel(45, 'on'), soundLevel(41, 'off'))).toContain(
      'at most 43.7 dB(A), at the cautious end of the interval of the reading at most 45.7 dB(A)',
    );
    const vagueOn = { ...vague(45), unit: 'dB(A)' as const };
    expect(sentence(vagueOn, soundLevel(41, 'off'))).toContain('for its uncertainty is not known');
  });

  test('of a bound says why it is one', () => {
    expect(sentence(soundLevel(38, 'on'), bounded(30, 'below'))).toMatch(
      /gives at most 38 dB\(A\), .*; only an upper bound is known, for the room was too quiet for the meter\./,
    );
    expect(sentence(soundLevel(45, 'on'), soundLevel(41, 'off'))).toContain(
      '; only an upper bound is known, for the room is too loud for the full correction.',
    );
  });

  test('of a gap gives its reason', () => {
    expect(sentence(soundLevel(40, 'on'), soundLevel(40, 'off'))).toContain(
      'not distinguishable from the room: at most 40 dB(A).',
    );
  });

  test.each([
    [bounded(30, 'below'), soundLevel(25, 'off'), 'the reading with the panel on is only a bound, below 30 dB(A).'],
    [soundLevel(50, 'on'), bounded(130, 'above'), 'the room was louder than the meter reads.'],
    [soundLevel(50, 'on'), gap('sound-off', { code: 'not-measured' }), 'the room can’t be taken off: not measured.'],
  ] as const)('of each gap gives its reason: case %#', (on, off, reason) => {
    expect(sentence(on, off)).toContain(`No level can be given for the panel alone: ${reason}`);
  });

  test('an equation with words in it stands beside the figure', () => {
    const { calculation } = figureOf(
      soundFigure('p/d', { on: soundLevel(38, 'on'), off: bounded(30, 'below'), distance: '1 m' }),
    );
    expect(told(calculation)).toBe('L ≤ L_on = 38 dB(A), the room being below 30 dB(A)');
  });
});

import { describe, expect, test } from 'vitest';
import { fieldSize, LARGEST_PITCH } from '../../../src/measure/checks/field-size.ts';
import { facts } from './facts.ts';

type Size = { width: number; height: number };
const flags = (field: Size | undefined, more: { housing?: Size | undefined; ledCount?: number | undefined } = {}) =>
  fieldSize.run(facts({ field, housing: undefined, ledCount: undefined, ...more }));

describe('an LED field', () => {
  test('in millimetres typed as centimetres: its LEDs would lie ten times too far apart', () => {
    expect(flags({ width: 20.3, height: 30.5 }, { ledCount: 60 })).toEqual([]);
    const [flag] = flags({ width: 203, height: 305 }, { ledCount: 60 });
    expect(flag).toMatchObject({ severity: 'doubt', at: ['field'] });
    expect(flag?.finding).toEqual({
      code: 'leds-far-apart',
      count: 60,
      field: { width: 203, height: 305 },
      // √(203 × 305 / 60)
      pitch: expect.closeTo(32.123, 3),
      most: LARGEST_PITCH,
    });
    expect(flag?.hint).toEqual({ code: 'other-unit-for-centimetres', width: 203, unit: 'mm' });
  });

  test.each([
    [9.99, 0],
    [10.01, 1],
    [0.401, 0],
    [0.399, 1],
  ])('of LEDs %s cm apart: flags %s time(s)', (pitch, count) => {
    const found = flags({ width: 10 * pitch, height: 10 * pitch }, { ledCount: 100 });
    expect(found).toHaveLength(count);
    if (count > 0) expect(found[0]?.finding).toHaveProperty('code', pitch > 1 ? 'leds-far-apart' : 'leds-close');
  });

  test('is seldom longer than 250 cm', () => {
    expect(flags({ width: 40, height: 250 })).toEqual([]);
    expect(flags({ width: 251, height: 40 })).toMatchObject([
      { finding: { code: 'field-too-long', most: 250 }, hint: { unit: 'mm' } },
    ]);
  });

  test('fills a quarter of its housing at least; inches typed as centimetres do not', () => {
    const housing = { width: 20, height: 40 };
    expect(flags({ width: 10, height: 20 }, { housing })).toEqual([]);
    expect(flags({ width: 10, height: 19.9 }, { housing })).toHaveLength(1);
    // 7 × 11 in in a housing of 21 × 32 cm.
    expect(flags({ width: 7, height: 11 }, { housing: { width: 21, height: 32 } })[0]).toMatchObject({
      finding: { code: 'field-small-in-housing', percent: expect.closeTo(11.458, 3), least: 25 },
      hint: { code: 'other-unit-for-centimetres', width: 7, unit: 'in' },
    });
    expect(flags({ width: 17.78, height: 27.94 }, { housing: { width: 21, height: 32 } })).toEqual([]);
  });

  test('is told of inches only where these would fit: else the housing is wrong, or a digit', () => {
    const [flag] = flags({ width: 17.78, height: 27.94 }, { housing: { width: 205, height: 310 } });
    expect(flag?.finding).toMatchObject({ code: 'field-small-in-housing' });
    expect(flag?.hint).toBeUndefined();
  });

  test('that was not measured is not judged', () => {
    expect(flags(undefined, { ledCount: 5 })).toEqual([]);
  });
});

import { describe, expect, test } from 'vitest';
import { assumedEmitter, countedEmitter } from '../../../src/measure/beam/assumed-emitter.ts';
import { emitterParts, isEven, type LedEmitter, placeLeds } from '../../../src/measure/beam/emitter.ts';
import { irradianceAt } from '../../references/sum-over-leds.ts';
import { placeLeds as placeIndependently } from '../../support/light-source.ts';
import { planeValuesOf } from '../../support/plane-values-of.ts';
import { knownEmitter, lightSource } from './make.ts';

const FIELD = { width: 20, height: 30 };
const GROUPS = [
  { name: 'red', share: 3 },
  { name: 'near-infrared', share: 1 },
];
const grid = (part: Partial<LedEmitter> = {}): LedEmitter => ({
  kind: 'leds',
  columns: 5,
  rows: 6,
  ledSize: 1,
  ...part,
});
const groupsOf = (emitter: LedEmitter) => {
  const rows = Map.groupBy(placeLeds(emitter, FIELD), (led) => led.y);
  return [...rows.values()].map((row) => row.map((led) => led.group).join(''));
};

describe('placing LEDs', () => {
  test('like the independent simulator', () => {
    const source = lightSource();
    const ours = placeLeds(knownEmitter(source) as LedEmitter, source);
    const theirs = placeIndependently(source);
    expect(ours).toHaveLength(theirs.length);
    ours.forEach((led, i) => {
      expect(led.x).toBeCloseTo(theirs[i]?.x ?? Number.NaN, 10);
      expect(led.y).toBeCloseTo(theirs[i]?.y ?? Number.NaN, 10);
      expect(led.share).toBeCloseTo(1 / 200, 12);
    });
  });

  test('the outer LEDs end at the edges of the field', () => {
    const leds = placeLeds(grid(), FIELD);
    expect(Math.max(...leds.map((led) => led.x))).toBeCloseTo(9.5, 12);
    expect(Math.max(...leds.map((led) => led.y))).toBeCloseTo(14.5, 12);
    expect(placeLeds(grid({ columns: 1, rows: 1 }), FIELD)).toEqual([{ x: 0, y: 0, share: 1, group: 0 }]);
  });

  test('staggered rows: one less, half a pitch aside', () => {
    const leds = placeLeds(grid({ staggered: true }), FIELD);
    expect(leds).toHaveLength(3 * 5 + 3 * 4);
    const [first, second] = [...Map.groupBy(leds, (led) => led.y).values()];
    expect((second?.[0]?.x ?? 0) - (first?.[0]?.x ?? 0)).toBeCloseTo(19 / 4 / 2, 12);
  });

  test('patterns of groups', () => {
    expect(groupsOf(grid({ groups: GROUPS }))).toEqual(['01010', '10101', '01010', '10101', '01010', '10101']);
    expect(groupsOf(grid({ groups: GROUPS, pattern: 'rows' }))).toEqual([
      '00000',
      '11111',
      '00000',
      '11111',
      '00000',
      '11111',
    ]);
    expect(groupsOf(grid({ groups: GROUPS, pattern: 'blocks' }))).toEqual([
      '00000',
      '00000',
      '00000',
      '11111',
      '11111',
      '11111',
    ]);
  });

  test('each group has its share of the power', () => {
    for (const pattern of ['checkerboard', 'rows', 'blocks'] as const) {
      for (const staggered of [false, true]) {
        const leds = placeLeds(grid({ groups: GROUPS, pattern, staggered }), FIELD);
        const power = (group: number) =>
          leds.filter((led) => led.group === group).reduce((sum, led) => sum + led.share, 0);
        expect(power(0)).toBeCloseTo(0.75, 12);
        expect(power(1)).toBeCloseTo(0.25, 12);
      }
    }
  });

  test.each<[string, Partial<LedEmitter>]>([
    ['no columns', { columns: 0 }],
    ['half a row', { rows: 2.5 }],
    ['LEDs as wide as the field', { ledSize: 20 }],
    ['LEDs of negative size', { ledSize: -1 }],
    ['one staggered LED a row', { columns: 1, staggered: true }],
    ['no group', { groups: [] }],
    ['a group without a share', { groups: [{ name: 'red', share: 0 }] }],
    ['more groups than rows', { rows: 1, groups: GROUPS, pattern: 'rows' }],
  ])('%s: refused', (_, part) => {
    expect(() => placeLeds(grid(part), FIELD)).toThrow(RangeError);
  });

  test('a field without width is refused, and light that falls short of it all', () => {
    expect(() => emitterParts(grid(), { width: 0, height: 3 })).toThrow(RangeError);
    expect(() => emitterParts({ kind: 'continuous', beyond: -10 }, FIELD)).toThrow(RangeError);
  });
});

describe('panels as products of profiles', () => {
  test.each<[string, Partial<LedEmitter>, number]>([
    ['like LEDs', {}, 1],
    ['a checkerboard of unlike groups', { groups: GROUPS }, 2],
    ['rows in turn', { groups: GROUPS, pattern: 'rows' }, 2],
    ['staggered rows', { staggered: true }, 2],
    ['a staggered checkerboard', { staggered: true, groups: GROUPS }, 2],
    [
      'a checkerboard of like groups',
      {
        groups: [
          { name: 'a', share: 1 },
          { name: 'b', share: 1 },
        ],
      },
      1,
    ],
  ])('%s: the plain sum over the LEDs', (_, part, kinds) => {
    const emitter = grid(part);
    const terms = emitterParts(emitter, FIELD);
    expect(terms).toHaveLength(kinds);
    const spots = [
      { x: 0, y: 0 },
      { x: 4.1, y: -9.3 },
      { x: -9.9, y: 14 },
    ];
    const found = planeValuesOf(terms, FIELD, spots)(6, 9);
    spots.forEach((spot, i) => {
      const plain = irradianceAt(placeLeds(emitter, FIELD), 6, 1, { ...spot, z: 9 });
      expect(Math.abs((found[i + 1] as number) / plain - 1)).toBeLessThan(1e-6);
    });
  });

  test('even or not', () => {
    expect(isEven({ kind: 'continuous', beyond: 0 })).toBe(true);
    expect(isEven(grid())).toBe(true);
    expect(isEven(grid({ groups: GROUPS }))).toBe(false);
    expect(
      isEven(
        grid({
          groups: [
            { name: 'a', share: 2 },
            { name: 'b', share: 2 },
          ],
        }),
      ),
    ).toBe(true);
  });
});

describe('what a panel is taken for', () => {
  test('a count that makes a regular grid', () => {
    const { emitter, edge, note } = assumedEmitter({ width: 28, height: 61 }, 200);
    expect(emitter).toMatchObject({ kind: 'leds', columns: 10, rows: 20 });
    const pitch = Math.min(28 / 9.5, 61 / 19.5);
    expect(emitter.kind === 'leds' && emitter.ledSize).toBeCloseTo(pitch / 2, 12);
    expect(edge).toBeCloseTo(pitch / 4, 12);
    expect(note).toEqual({ code: 'beam-taken-for-grid', columns: 10, rows: 20 });
  });

  test.each([
    ['no count', undefined, { code: 'beam-taken-for-even-field' }],
    ['a prime number', 211, { code: 'beam-no-regular-grid', count: 211 }],
    ['a single LED', 1, { code: 'beam-no-regular-grid', count: 1 }],
  ])('%s: an even field', (_, count, wanted) => {
    const { emitter, edge, note } = assumedEmitter({ width: 28, height: 61 }, count);
    expect(emitter.kind).toBe('continuous');
    expect(edge).toBeGreaterThan(0);
    expect(note).toEqual(wanted);
  });
});

describe('LEDs that were counted', () => {
  const field = { width: 20, height: 40 };

  test('with their size they are taken as they are', () => {
    expect(countedEmitter(field, { columns: 8, rows: 16, ledSize: 0.9, staggered: true })).toEqual({
      emitter: { kind: 'leds', columns: 8, rows: 16, ledSize: 0.9, staggered: true },
      edge: 0.1,
      note: { code: 'beam-leds-counted', columns: 8, rows: 16, staggered: true, isSizeAssumed: false },
    });
  });

  test('without it each is half as wide as its pitch, give or take that half', () => {
    const { emitter, edge, note } = countedEmitter(field, { columns: 8, rows: 16 });
    // 40 cm = 15 pitches + half a pitch.
    expect(emitter).toMatchObject({ kind: 'leds', ledSize: 40 / 15.5 / 2 });
    expect(edge).toBeCloseTo(40 / 15.5 / 4, 12);
    expect(note).toMatchObject({ code: 'beam-leds-counted', staggered: false, isSizeAssumed: true });
  });
});

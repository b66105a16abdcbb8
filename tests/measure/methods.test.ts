import katex from 'katex';
import { describe, expect, test } from 'vitest';
import { NEAREST_BENCH } from '../../src/measure/checks/bench-distance.ts';
import { LARGEST_PITCH } from '../../src/measure/checks/field-size.ts';
import { MAGNETIC_OFF_ODD } from '../../src/measure/checks/unit-slips.ts';
import { SHORTEST_WARM_UP } from '../../src/measure/checks/warm-up-time.ts';
import { METHOD_CONSTANTS } from '../../src/measure/method-constants.ts';
import {
  isMethodId,
  isSameMethod,
  METHOD_IDS,
  methodOfText,
  methodReference,
  methodText,
} from '../../src/measure/method-versions.ts';
import { METHODS, type Method, methodById } from '../../src/measure/methods.ts';
import { RANK_TRIALS } from '../../src/measure/money/ranking.ts';
import {
  IMPOSSIBLE_EFFICIENCY,
  ODD_EFFICIENCY,
  OUTLIER_Z,
  SMALLEST_OUTLIER,
  STALE_PRICE_DAYS,
  WAVELENGTH_TOLERANCE_NM,
} from '../../src/measure/thresholds.ts';
import { citationFaults, sourceFiles } from './method-files.ts';

const top = new URL('../../', import.meta.url);

function cannotBeSet(tex: string): string | undefined {
  try {
    katex.renderToString(tex, { throwOnError: true, strict: 'error' });
    return undefined;
  } catch (error) {
    return String(error);
  }
}

/** What is wrong with methods of the catalogue, in words; nothing where they are sound. */
function faults(methods: readonly Method[]): string[] {
  return methods.flatMap(({ id, name, version, formula, symbols, constants }) => [
    ...(/^[a-z]+(-[a-z]+)*$/.test(id) ? [] : [`${id}: not fit for an address`]),
    ...(name.trim() === '' ? [`${id}: no name`] : []),
    ...(Number.isInteger(version) && version >= 1 ? [] : [`${id}: versions count from 1, and ${version} is none`]),
    ...[...(formula ? [formula] : []), ...symbols.map(([tex]) => tex)].flatMap((tex) => {
      const fault = cannotBeSet(tex);
      return fault ? [`${id}: ${fault}`] : [];
    }),
    ...(symbols.length > 0 === (formula !== undefined)
      ? []
      : [`${id}: symbols stand beside a formula, and only there`]),
    ...symbols.flatMap(([tex, meaning]) => (meaning.trim() === '' ? [`${id}: nothing said of ${tex}`] : [])),
    ...constants.flatMap((it) => (it.why.trim() === '' ? [`${id}: no reason for ${it.name}`] : [])),
    ...constants.flatMap((it) => (Number.isFinite(it.value) ? [] : [`${id}: no value of ${it.name}`])),
  ]);
}

describe('the catalogue of methods', () => {
  test('has no faults', () => {
    expect(faults(METHODS)).toEqual([]);
  });

  test('would tell of one', () => {
    const odd = {
      ...methodById('capture'),
      version: 0,
      formula: '\\frac{1}',
      symbols: [],
      constants: [{ name: 'edge', value: Number.NaN, unit: '1', why: ' ' }],
    };
    expect(faults([odd]).map((it) => it.replace(/ParseError.*/, 'no TeX'))).toEqual([
      'capture: versions count from 1, and 0 is none',
      'capture: no TeX',
      'capture: symbols stand beside a formula, and only there',
      'capture: no reason for edge',
      'capture: no value of edge',
    ]);
  });

  test('has constants of its own methods only', () => {
    expect(Object.keys(METHOD_CONSTANTS).filter((id) => !isMethodId(id))).toEqual([]);
  });

  test('names the constants that the calculation uses, with their values', () => {
    const constant = (id: string, name: string) => methodById(id).constants.find((it) => it.name === name)?.value;
    expect(constant('efficiency', 'odd above')).toBe(ODD_EFFICIENCY);
    expect(constant('efficiency', 'impossible above')).toBe(IMPOSSIBLE_EFFICIENCY);
    expect(constant('plausibility', 'outlier beyond')).toBe(OUTLIER_Z);
    expect(constant('plausibility', 'smallest distance called out')).toBe(100 * SMALLEST_OUTLIER);
    expect(constant('plausibility', 'shortest warm-up')).toBe(SHORTEST_WARM_UP);
    expect(constant('plausibility', 'nearest bench')).toBe(NEAREST_BENCH);
    expect(constant('plausibility', 'LEDs farther apart than')).toBe(LARGEST_PITCH);
    expect(constant('plausibility', 'magnetic field of a room above')).toBe(MAGNETIC_OFF_ODD);
    expect(constant('real-price', 'stale after')).toBe(STALE_PRICE_DAYS);
    expect(constant('wavelength', 'tolerance against the claim')).toBe(WAVELENGTH_TOLERANCE_NM);
    expect(constant('rank', 'draws')).toBe(RANK_TRIALS);
  });
});

describe('the file that a method cites', () => {
  test('is there, wherever under src/, and computes what src/ itself calls', () => {
    expect(citationFaults(METHODS, sourceFiles(top))).toEqual([]);
  });

  test.each([
    ['nothing', [], 'a: src/b.ts is not there'],
    [
      'a caller',
      [
        ['a.ts', "import { b } from './b.ts';"],
        ['b.ts', 'export function b() {}'],
      ],
      undefined,
    ],
    [
      'a caller of another name',
      [
        ['a.ts', "import { c } from './b.ts';"],
        ['b.ts', 'export function b() {}\nexport const c = 1;'],
      ],
      'a: nothing in src/ calls what src/b.ts computes',
    ],
    [
      'a caller of types',
      [
        ['a.ts', "import type { b } from './b.ts';"],
        ['b.ts', 'export function b() {}'],
      ],
      'a: nothing in src/ calls what src/b.ts computes',
    ],
    [
      'a list of constants',
      [
        ['x/method-constants.ts', "import { b } from '../b.ts';"],
        ['b.ts', 'export function b() {}'],
      ],
      'a: nothing in src/ calls what src/b.ts computes',
    ],
    ['tests alone', [['b.ts', 'export function b() {}']], 'a: nothing in src/ calls what src/b.ts computes'],
  ] as const)('with %s', (_, files, fault) => {
    const given = files.map(([file, source]) => ({ file: `src/${file}`, source }));
    expect(citationFaults([{ id: 'a', file: 'src/b.ts' }], given)).toEqual(fault === undefined ? [] : [fault]);
  });
});

test('a method is found by its id, and referred to with its version', () => {
  expect(methodById('optical-power').name).toBe('Optical power at the reference plane');
  const reference = methodReference('optical-power');
  expect(reference).toEqual({ id: 'optical-power', version: methodById('optical-power').version });
  // One object for all figures, which nobody can change.
  expect(methodReference('optical-power')).toBe(reference);
  expect(Object.isFrozen(reference)).toBe(true);
});

test('a reference is printed in one way, and read again from a file', () => {
  expect(methodText({ id: 'optical-power', version: 3 })).toBe('optical-power@3');
  expect(methodOfText('optical-power@3')).toEqual({ id: 'optical-power', version: 3 });
  expect(() => methodOfText('brightness@1')).toThrow('no method is registered as "brightness"');
});

test('two versions of a method are not the same method', () => {
  const one = methodReference('optical-power');
  expect(isSameMethod(one, { ...one })).toBe(true);
  expect(isSameMethod(one, { ...one, version: one.version + 1 })).toBe(false);
  expect(isSameMethod(one, methodReference('capture'))).toBe(false);
});

test('an unregistered method is refused by name', () => {
  expect(() => methodById('brightness')).toThrow('no method is registered as "brightness"');
  expect(() => methodById('toString')).toThrow('toString');
  expect(isMethodId('toString')).toBe(false);
  expect(METHOD_IDS).toHaveLength(METHODS.length);
});

import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import katex from 'katex';
import { describe, expect, test } from 'vitest';
import { NEAREST_BENCH } from '../../src/measure/checks/bench-distance.ts';
import { LARGEST_PITCH } from '../../src/measure/checks/field-size.ts';
import { MAGNETIC_OFF_ODD } from '../../src/measure/checks/unit-slips.ts';
import { SHORTEST_WARM_UP } from '../../src/measure/checks/warm-up-time.ts';
import { methodReference, VERSIONED_METHODS } from '../../src/measure/method-versions.ts';
import {
  IMPOSSIBLE_EFFICIENCY,
  METHODS,
  methodById,
  ODD_EFFICIENCY,
  OUTLIER_Z,
  SMALLEST_OUTLIER,
  STALE_PRICE_DAYS,
  WAVELENGTH_TOLERANCE_NM,
} from '../../src/measure/methods.ts';
import { RANK_TRIALS } from '../../src/measure/money/ranking.ts';

const top = new URL('../../', import.meta.url);

describe('the registry of methods', () => {
  test('has each id once, fit for an address', () => {
    const ids = METHODS.map((method) => method.id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids) expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/);
  });

  test('has a version for each, and none for anything else', () => {
    expect(VERSIONED_METHODS.toSorted()).toEqual(METHODS.map((method) => method.id).toSorted());
  });

  test('counts versions from 1', () => {
    for (const { version } of METHODS) {
      expect(Number.isInteger(version)).toBe(true);
      expect(version).toBeGreaterThanOrEqual(1);
    }
  });

  test.each(METHODS.map((method) => [method.id, method] as const))('%s has formulas that can be set', (_, method) => {
    const render = (tex: string) => katex.renderToString(tex, { throwOnError: true, strict: 'error' });
    if (method.formula) expect(render(method.formula)).toContain('katex');
    for (const [tex, meaning] of method.symbols) {
      expect(render(tex)).toContain('katex');
      expect(meaning).not.toBe('');
    }
  });

  test('explains symbols only beside a formula', () => {
    for (const method of METHODS) expect(method.symbols.length > 0, method.id).toBe(method.formula !== undefined);
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
    for (const { constants } of METHODS) for (const it of constants) expect(it.why).not.toBe('');
  });

  test.each(METHODS.map(({ id, file }) => [id, file] as const))('%s names a file that exists: %s', (_, file) => {
    expect(existsSync(new URL(file, top))).toBe(true);
  });

  test('names the very file whose figures carry the method', () => {
    const folder = fileURLToPath(new URL('src/measure/', top));
    const wrong: string[] = [];
    for (const name of readdirSync(folder).filter((it) => it.endsWith('.ts'))) {
      for (const [, id] of readFileSync(`${folder}${name}`, 'utf8').matchAll(/methodReference\('([^']+)'\)/g)) {
        const { file } = methodById(id as string);
        if (file !== `src/measure/${name}`)
          wrong.push(`${id}: registered in ${file}, calculated in src/measure/${name}`);
      }
    }
    expect(wrong).toEqual([]);
  });
});

test('a method is found by its id, and referred to with its version', () => {
  expect(methodById('optical-power').name).toBe('Optical power at the reference plane');
  expect(methodReference('optical-power')).toBe(`optical-power@${methodById('optical-power').version}`);
});

test('an unregistered method is refused by name', () => {
  expect(() => methodById('brightness')).toThrow('no method is registered as "brightness"');
  expect(() => methodReference('toString')).toThrow('toString');
});

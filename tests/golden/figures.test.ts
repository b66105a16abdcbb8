import { describe, expect, test } from 'vitest';
import { versionOf } from '../../src/measure/method-versions.ts';
import { demoLedger } from '../support/demo-ledger.ts';
import { movedFigures, movedTable } from './compare.ts';
import { type Golden, type GoldenFigure, goldenOf, goldenText, parseGolden } from './golden.ts';
import { readGolden } from './golden-file.ts';

describe('the figures of the demonstration', () => {
  const { golden, budgetVersion } = readGolden();
  const now = goldenOf(demoLedger());

  test('are those of the golden file; where they should move, raise the method’s version and renew the file', () => {
    const moved = movedFigures(golden, now, [budgetVersion, versionOf('uncertainty')]);
    expect(moved.length === 0 ? '' : movedTable(moved)).toBe('');
  });

  test('carry the method versions of the golden file, and there are as many', () => {
    const methods = (it: Golden) => [...it.figures].map(([id, { method }]) => `${id} ${method}`).toSorted();
    expect(methods(now)).toEqual(methods(golden));
    expect(golden.figures.size).toBeGreaterThan(900);
    expect(golden.panels.size).toBeGreaterThan(10);
  });

  test('read back as they were written', () => {
    expect(goldenText(parseGolden(goldenText(now)))).toBe(goldenText(now));
  });
});

describe('what moved', () => {
  const figure = (value: number, method: string, inputs: string[] = []): GoldenFigure => ({
    value,
    unit: 'W',
    interval: [value - 1, value + 1],
    method,
    inputs,
  });
  const guide = (changes: Record<string, GoldenFigure | undefined> = {}, readings = 'a'): Golden => {
    const figures: Record<string, GoldenFigure | undefined> = {
      'tern/mean': figure(40, 'mean-irradiance@1', ['tern/grid.rows']),
      'tern/power': figure(20, 'optical-power@1', ['tern/mean', 'tern/area']),
      'tern/efficiency': figure(30, 'efficiency@1', ['tern/power']),
      'knot/mean': figure(35, 'mean-irradiance@1', ['knot/grid.rows']),
      ...changes,
    };
    return {
      panels: new Map([
        ['tern', readings],
        ['knot', 'b'],
      ]),
      figures: new Map(Object.entries(figures).filter((it): it is [string, GoldenFigure] => it[1] !== undefined)),
    };
  };
  const causes = (after: Golden, budgets: readonly [number, number] = [1, 1]) =>
    movedFigures(guide(), after, budgets).map((it) => [it.id, it.causes]);

  test('is nothing where all is as it was, up to another machine’s last digits', () => {
    expect(causes(guide())).toEqual([]);
    expect(causes(guide({ 'tern/mean': figure(40 * (1 + 1e-12), 'mean-irradiance@1', ['tern/grid.rows']) }))).toEqual(
      [],
    );
  });

  test('has no cause where a number moves while readings and versions stand still', () => {
    expect(causes(guide({ 'tern/mean': figure(40.0001, 'mean-irradiance@1', ['tern/grid.rows']) }))).toEqual([
      ['tern/mean', []],
    ]);
  });

  test('has the method’s own version for a cause, or that of a method further down', () => {
    const after = guide({
      'tern/mean': figure(41, 'mean-irradiance@2', ['tern/grid.rows']),
      'tern/power': figure(20.5, 'optical-power@1', ['tern/mean', 'tern/area']),
      'tern/efficiency': figure(30.75, 'efficiency@1', ['tern/power']),
    });
    expect(causes(after)).toEqual([
      ['tern/efficiency', ['mean-irradiance@2']],
      ['tern/mean', ['mean-irradiance@2']],
      ['tern/power', ['mean-irradiance@2']],
    ]);
  });

  test('has no cause in a version that went up elsewhere', () => {
    const after = guide({
      'tern/mean': figure(40, 'mean-irradiance@1', ['tern/grid.rows']),
      'tern/power': figure(21, 'optical-power@1', ['tern/mean', 'tern/area']),
      'tern/efficiency': figure(30, 'efficiency@2', ['tern/power']),
    });
    expect(causes(after)).toEqual([['tern/power', []]]);
  });

  test('has no cause in a version that went down', () => {
    const before = guide({ 'tern/mean': figure(40, 'mean-irradiance@2') });
    const after = guide({ 'tern/mean': figure(42, 'mean-irradiance@1') });
    expect(movedFigures(before, after, [1, 1])).toMatchObject([{ id: 'tern/mean', causes: [] }]);
  });

  test('has other readings for a cause, of that panel alone', () => {
    const after = guide(
      {
        'tern/mean': figure(44, 'mean-irradiance@1', ['tern/grid.rows']),
        'knot/mean': figure(36, 'mean-irradiance@1', ['knot/grid.rows']),
      },
      'c',
    );
    expect(causes(after)).toEqual([
      ['knot/mean', []],
      ['tern/mean', ['other readings']],
    ]);
  });

  test('takes a new way of putting budgets together for the cause of another interval, never of another value', () => {
    const wider: GoldenFigure = { ...figure(40, 'mean-irradiance@1'), interval: [38, 42] };
    expect(causes(guide({ 'tern/mean': wider }), [1, 2])).toEqual([['tern/mean', ['uncertainty@1 to 2']]]);
    expect(causes(guide({ 'tern/mean': figure(41, 'mean-irradiance@1') }), [1, 2])).toEqual([['tern/mean', []]]);
  });

  test('notices a figure that is gone, one that is new, and another unit', () => {
    expect(causes(guide({ 'tern/efficiency': undefined }))).toEqual([['tern/efficiency', []]]);
    expect(causes(guide({ 'tern/sound': figure(30, 'sound@1') }))).toEqual([['tern/sound', ['sound@1']]]);
    expect(causes(guide({ 'tern/more': figure(30, 'optical-power@1') }))).toEqual([['tern/more', []]]);
    expect(causes(guide({ 'knot/mean': { ...figure(35, 'mean-irradiance@1'), unit: 'mW' } }))).toEqual([
      ['knot/mean', []],
    ]);
  });
});

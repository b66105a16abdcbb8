import { describe, expect, test } from 'vitest';
import { efficiencyPossible } from '../../../src/measure/checks/efficiency-possible.ts';
import { figure, line } from '../make.ts';
import { facts } from './facts.ts';

const flagsAt = (value: number, metric = 'efficiency-combined') =>
  efficiencyPossible.run(facts({ values: { [metric]: value } }));

describe('an efficiency', () => {
  test.each([0, 30, 59.9, 60])('of %d %% is nothing odd', (value) => {
    expect(flagsAt(value)).toEqual([]);
  });

  test.each([60.1, 75, 81])('of %d %% is odd', (value) => {
    expect(flagsAt(value)).toMatchObject([{ severity: 'doubt' }]);
  });

  test.each([81.1, 99, 100, 140])('of %d %% is impossible', (value) => {
    expect(flagsAt(value)).toMatchObject([{ severity: 'impossible' }]);
  });

  test.each([
    [1, 'impossible'],
    [5, 'doubt'],
  ])('of 85 %% with a standard uncertainty of %d %% is %s', (u, severity) => {
    const it = figure(85, [line('draw', u)]);
    const found = efficiencyPossible.run({
      ...facts(),
      figure: (metric) => (metric === 'efficiency-combined' ? it : undefined),
    });
    expect(found).toMatchObject([{ severity, finding: { percent: 85 } }]);
  });

  test('is named with its number and the limit', () => {
    expect(flagsAt(64.27)[0]?.finding).toEqual({ code: 'efficiency-odd', percent: 64.27, limit: 60 });
    expect(flagsAt(92)[0]?.finding).toEqual({ code: 'efficiency-impossible', percent: 92, limit: 81 });
  });

  test.each(['efficiency-red', 'efficiency-near-infrared', 'efficiency-combined-net', 'efficiency-red-net'])(
    'is looked at in every mode, gross and net: %s',
    (metric) => {
      expect(flagsAt(70, metric)[0]?.concerns[0]).toBe(metric);
    },
  );

  test('puts what it is made of in doubt: the power or the draw is wrong, and nothing tells which', () => {
    for (const metric of ['efficiency-combined', 'efficiency-combined-net']) {
      expect(flagsAt(140, metric)[0]?.concerns).toEqual([
        metric,
        'optical-power',
        'emitted-power',
        'mains-draw-combined',
      ]);
    }
  });

  test.each([
    [60, false],
    [60.1, true],
    [undefined, true],
  ])('of one channel, with %s %% for both, doubts the power too: %s', (combined, isPowerDoubted) => {
    const values = { 'efficiency-red': 90, 'efficiency-combined': combined };
    const it = efficiencyPossible.run(facts({ values })).find((flag) => flag.concerns[0] === 'efficiency-red');
    expect(it?.concerns).toEqual([
      'efficiency-red',
      ...(isPowerDoubted ? ['optical-power', 'emitted-power'] : []),
      'peak-irradiance-red',
      'mains-draw-red',
    ]);
  });

  test('that is not known is not flagged', () => {
    const values = { 'efficiency-combined': undefined, 'efficiency-red': undefined };
    expect(efficiencyPossible.run(facts({ values }))).toEqual([]);
  });
});

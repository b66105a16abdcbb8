import { describe, expect, test } from 'vitest';
import { efficiencyPossible } from '../../../src/measure/plausibility/efficiency-possible.ts';
import { facts } from './facts.ts';

const flagsAt = (value: number, metric = 'efficiency-combined') =>
  efficiencyPossible.run(facts({ values: { [metric]: value } }));

describe('an efficiency', () => {
  test.each([0, 30, 59.9, 60])('of %d %% is nothing odd', (value) => {
    expect(flagsAt(value)).toEqual([]);
  });

  test.each([60.1, 75, 81])('of %d %% is odd', (value) => {
    expect(flagsAt(value)).toMatchObject([{ severity: 'doubt', concerns: ['efficiency-combined'] }]);
  });

  test.each([81.1, 99, 100, 140])('of %d %% is impossible', (value) => {
    expect(flagsAt(value)).toMatchObject([{ severity: 'impossible', concerns: ['efficiency-combined'] }]);
  });

  test('is named with its number and the limit', () => {
    expect(flagsAt(64.27)[0]?.text).toMatch(/^An efficiency of 64.3 % is odd: .* 60 %/);
    expect(flagsAt(92)[0]?.text).toMatch(/^An efficiency of 92 % is not possible: .* 81 %/);
  });

  test.each(['efficiency-red', 'efficiency-near-infrared', 'efficiency-combined-net', 'efficiency-red-net'])(
    'is looked at in every mode, gross and net: %s',
    (metric) => {
      expect(flagsAt(70, metric)).toMatchObject([{ concerns: [metric] }]);
    },
  );

  test('that is not known is not flagged', () => {
    const values = { 'efficiency-combined': undefined, 'efficiency-red': undefined };
    expect(efficiencyPossible.run(facts({ values }))).toEqual([]);
  });
});

import { describe, expect, test } from 'vitest';
import type { InstrumentUse } from '../../../src/measure/checks/check.ts';
import { displayEnd } from '../../../src/measure/checks/display-end.ts';
import { figure } from '../make.ts';
import { facts } from './facts.ts';

const meter: InstrumentUse = {
  kind: 'irradiance',
  name: 'thermopile',
  highest: 300,
  step: 0.1,
  metrics: ['peak-irradiance-combined', 'mean-irradiance'],
};
const peak = (value: number, part: Partial<InstrumentUse> = {}, factor?: number) =>
  displayEnd.run(
    facts({
      values: { 'peak-irradiance-combined': value, 'mismatch-factor-combined': factor },
      instruments: [{ ...meter, ...part }],
    }),
  );

describe('a reading', () => {
  test('at the end of the display, or a step before it, may be more', () => {
    expect(peak(299.8)).toEqual([]);
    for (const value of [299.9, 300]) {
      expect(peak(value)).toEqual([
        {
          severity: 'doubt',
          finding: { code: 'reading-at-display-end', value, unit: 'W', instrument: 'thermopile', highest: 300 },
          hint: { code: 'look-at-unit-and-range' },
          concerns: ['peak-irradiance-combined'],
        },
      ]);
    }
  });

  test('is judged as the meter showed it, not as it was corrected', () => {
    expect(peak(297, {}, 0.99)).toHaveLength(1);
    expect(peak(300, {}, 1.01)).toEqual([]);
  });

  test('of the grid: its highest point', () => {
    const points = (highest: number) => facts({ gridPoints: [200, null, highest], instruments: [meter] });
    expect(displayEnd.run(points(299.8))).toEqual([]);
    expect(displayEnd.run(points(300))).toMatchObject([{ concerns: ['mean-irradiance'], finding: { value: 300 } }]);
    expect(displayEnd.run(facts({ gridPoints: [], instruments: [meter] }))).toEqual([]);
  });

  test('that is written as a bound says so itself', () => {
    const bounded = { ...figure(300, [], 'magnetic-field-on'), bound: 'above' as const };
    const instruments: InstrumentUse[] = [{ ...meter, kind: 'magnetic', metrics: ['magnetic-field-on'] }];
    expect(displayEnd.run({ ...facts({ instruments }), figure: () => bounded })).toEqual([]);
  });

  test.each(['flicker', 'spectrum'])('of %s has an end of its own', (kind) => {
    expect(peak(300, { kind })).toEqual([]);
  });

  test('of a meter that is not named, or whose end is not known, is not judged', () => {
    expect(peak(300, { name: undefined })).toEqual([]);
    expect(peak(300, { highest: undefined })).toEqual([]);
  });
});

import { describe, expect, test } from 'vitest';
import { type CheckValue, expectToMeet, STANDINGS } from './check-value.ts';
import { CHART_CONSTANTS, FLOW_RATE_LIMITS, NORRIS_LINE } from './control-chart.ts';
import { DISC_EXPONENTS, DISC_IRRADIANCE } from './distance-setting.ts';
import { RED_LED_LIMIT, RED_LED_LIMIT_PHOTONS } from './efficiency.ts';
import { EXPOSURE_TABLES } from './exposure.ts';
import { CELL_MEANS, GRID_STATISTICS } from './grid.ts';
import { POLISHED } from './median-polish.ts';
import { MODIFIED_Z } from './modified-z.ts';
import * as optics from './optics.ts';
import { EXPOSURES, TIMES } from './radiant-exposure.ts';
import { FNV_1A } from './seed.ts';
import { CERTIFIED_SETS, readValues } from './statistics.ts';
import { T_975, TABLE_G2 } from './student-t.ts';
import * as uncertainty from './uncertainty.ts';

const TABLES: Record<string, readonly CheckValue<unknown>[]> = {
  'control chart': [...FLOW_RATE_LIMITS, ...NORRIS_LINE, ...CHART_CONSTANTS],
  disc: [...DISC_IRRADIANCE, ...DISC_EXPONENTS],
  efficiency: [RED_LED_LIMIT, RED_LED_LIMIT_PHOTONS],
  grid: [...GRID_STATISTICS, ...CELL_MEANS],
  'median polish': POLISHED,
  'modified z-scores': MODIFIED_Z,
  optics: [
    ...optics.BEAM_ORDERS,
    optics.AXIAL_INTENSITY,
    ...optics.SINGLE_LED,
    ...optics.RECTANGLE_FACTORS,
    ...optics.ERROR_FUNCTION,
    ...optics.CHI_SQUARE_TAILS,
  ],
  ...EXPOSURE_TABLES,
  'radiant exposure': [...EXPOSURES, ...TIMES],
  seed: FNV_1A,
  statistics: CERTIFIED_SETS.flatMap((set) => [set.mean, set.standardDeviation]),
  'student t': [...T_975, ...TABLE_G2],
  uncertainty: [
    ...uncertainty.RECTANGULAR,
    ...uncertainty.TYPE_A,
    ...uncertainty.COMBINED,
    ...uncertainty.EFFECTIVE_DEGREES,
    ...uncertainty.EXPANDED,
    ...uncertainty.QUOTIENT_RELATIVE,
    ...uncertainty.QUOTIENT_ABSOLUTE,
  ],
};

describe.each(Object.entries(TABLES))('check values: %s', (_, rows) => {
  test.each(rows.map((row) => [row.label, row] as const))('%s says where it is from', (_label, row) => {
    expect(Number.isFinite(row.expected)).toBe(true);
    expect(row.tolerance).toBeGreaterThanOrEqual(0);
    expect(row.because.length).toBeGreaterThan(4);
    expect(row.source.length).toBeGreaterThan(4);
    expect(STANDINGS).toContain(row.verified);
  });

  test('labels are distinct within a table', () => {
    const labels = rows.map((row) => row.label);
    expect(new Set(labels).size).toBe(labels.length);
  });
});

test('the certified sets are complete', () => {
  const sizes = CERTIFIED_SETS.map((set) => [set.mean.arguments, set.values.length]);
  expect(sizes).toEqual([
    ['NumAcc1', 3],
    ['NumAcc2', 1001],
    ['NumAcc3', 1001],
    ['NumAcc4', 1001],
    ['Michelso', 100],
    ['Mavro', 50],
  ]);
  expect(CERTIFIED_SETS.every((set) => set.values.every(Number.isFinite))).toBe(true);
});

test('a data file gives its values and skips comments and empty lines', () => {
  expect(readValues('# header 12\n1.5\n\n  -2  \n')).toEqual([1.5, -2]);
});

test('a value beyond the tolerance of its row is refused', () => {
  const row: CheckValue<null> = {
    label: 'one',
    arguments: null,
    expected: 1,
    tolerance: 0.1,
    because: 'example',
    source: 'example',
    verified: 'computed',
  };
  expect(() => expectToMeet(1.05, row)).not.toThrow();
  expect(() => expectToMeet(1.2, row)).toThrow(/one: 1.2 instead of 1/);
  expect(() => expectToMeet(Number.NaN, row)).toThrow(/NaN/);
});

import { readFileSync } from 'node:fs';
import type { CheckValue } from './check-value.ts';

/**
 * Univariate data sets with certified mean and standard deviation from the Statistical Reference Datasets of the
 * US National Institute of Standards and Technology (NIST StRD, US public domain).
 */
export interface CertifiedSet {
  values: readonly number[];
  mean: CheckValue<string>;
  standardDeviation: CheckValue<string>;
}

const SOURCE = 'NIST StRD, univariate summary statistics';

/** A first value and then two values in turn, `pairs` times: the recipe of NumAcc2 to NumAcc4. */
function alternating(first: number, low: number, high: number, pairs: number): number[] {
  return [first, ...Array.from({ length: 2 * pairs }, (_, i) => (i % 2 === 0 ? low : high))];
}

/** The values of a data file: one a line, `#` begins a comment. */
export function readValues(text: string): number[] {
  return text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '' && !line.startsWith('#'))
    .map(Number);
}

const MICHELSO = readValues(readFileSync(new URL('./michelso.txt', import.meta.url), 'utf8'));

const MAVRO = [
  2.0018, 2.0017, 2.0018, 2.0019, 2.0018, 2.0017, 2.0015, 2.0014, 2.0015, 2.0015, 2.0017, 2.0018, 2.0018, 2.0019,
  2.0019, 2.0021, 2.002, 2.0016, 2.0014, 2.0013, 2.0013, 2.0015, 2.0015, 2.0016, 2.0015, 2.0014, 2.0013, 2.0014, 2.0015,
  2.0014, 2.0015, 2.0016, 2.0015, 2.0016, 2.0019, 2.002, 2.002, 2.0021, 2.0022, 2.0023, 2.0024, 2.0025, 2.0027, 2.0026,
  2.0026, 2.0026, 2.0027, 2.0026, 2.0025, 2.0024,
];

interface Row {
  set: string;
  values: readonly number[];
  mean: readonly [expected: number, tolerance: number];
  standardDeviation: readonly [expected: number, tolerance: number];
  because: string;
}

const ROWS: readonly Row[] = [
  {
    set: 'NumAcc1',
    values: [10000001, 10000003, 10000002],
    mean: [10000002, 0],
    standardDeviation: [1, 0],
    because: 'whole numbers: mean and s are exact',
  },
  {
    set: 'NumAcc2',
    values: alternating(1.2, 1.1, 1.3, 500),
    mean: [1.2, 1e-13],
    standardDeviation: [0.1, 1e-13],
    because: '1,001 additions of doubles near 1, each off by 2e-16 at most',
  },
  {
    set: 'NumAcc3',
    values: alternating(1000000.2, 1000000.1, 1000000.3, 500),
    mean: [1000000.2, 1e-9],
    standardDeviation: [0.1, 1e-9],
    because: 'the tenths are not exact doubles: neighbours near 1e6 lie 1.2e-10 apart',
  },
  {
    set: 'NumAcc4',
    values: alternating(10000000.2, 10000000.1, 10000000.3, 500),
    mean: [10000000.2, 1e-8],
    standardDeviation: [0.1, 1e-8],
    because:
      'the tenths are not exact doubles: neighbours near 1e7 lie 1.9e-9 apart; the sum of squares less the squared sum would give a negative variance here',
  },
  {
    set: 'Michelso',
    values: MICHELSO,
    mean: [299.8524, 1e-11],
    standardDeviation: [0.0790105478190518, 1e-13],
    because: 'three digits are lost to the subtraction of the mean',
  },
  {
    set: 'Mavro',
    values: MAVRO,
    mean: [2.001856, 1e-13],
    standardDeviation: [0.000429123454003053, 1e-15],
    because: 'four digits are lost to the subtraction of the mean',
  },
];

/** NumAcc1 to NumAcc4 by their recipes, Michelso (speed of light) and Mavro (transmittance of a filter). */
export const CERTIFIED_SETS: readonly CertifiedSet[] = ROWS.map(({ set, values, mean, standardDeviation, because }) => {
  const common = { arguments: set, because, source: `${SOURCE}, ${set}`, verified: 'read' as const };
  return {
    values,
    mean: { ...common, label: `${set}, mean`, expected: mean[0], tolerance: mean[1] },
    standardDeviation: {
      ...common,
      label: `${set}, standard deviation`,
      expected: standardDeviation[0],
      tolerance: standardDeviation[1],
    },
  };
});

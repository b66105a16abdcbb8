import type { CheckValue } from './check-value.ts';

/** A value among values; its score is looked for. */
export interface Among {
  values: readonly number[];
  value: number;
}

const METHOD = 'Iglewicz and Hoaglin 1993, as in the NIST/SEMATECH e-Handbook 1.3.5.17 (from memory)';
const score = (label: string, values: readonly number[], value: number, expected: number): CheckValue<Among> => ({
  label,
  arguments: { values, value },
  expected,
  tolerance: 1e-9,
  because: 'rounding in subtractions of the median',
  source: `worked example of our own, repeated in another program; the formula: ${METHOD}`,
  verified: 'computed',
});

// Median 100; absolute deviations 0 0 1 1 2 2 3 3 40, so MAD = 2.
const ONE_HOT_SPOT = [98, 101, 99, 102, 100, 97, 103, 100, 140];
// Median 100; six of nine are equal, so MAD = 0; mean absolute deviation 12 / 9.
const MOSTLY_EQUAL = [100, 100, 100, 100, 100, 100, 101, 99, 110];
// An even number of values: median 2.45; absolute deviations sorted by size have 0.15 and 0.15 in the middle.
const TWO_FAR_OFF = [2.1, 2.6, 2.4, 2.5, 2.3, 2.1, 2.3, 2.6, 8.2, 8.3];

export const MODIFIED_Z: readonly CheckValue<Among>[] = [
  score('hot spot', ONE_HOT_SPOT, 140, 13.49),
  score('highest of the rest', ONE_HOT_SPOT, 103, 1.01175),
  score('lowest of the rest', ONE_HOT_SPOT, 97, -1.01175),
  score('the median itself', ONE_HOT_SPOT, 100, 0),
  score('hot spot where MAD is 0', MOSTLY_EQUAL, 110, 5.98413486165478),
  score('neighbour where MAD is 0', MOSTLY_EQUAL, 99, -0.598413486165478),
  score('an even number of values', TWO_FAR_OFF, 8.3, 26.3055),
  score('an even number of values, lowest', TWO_FAR_OFF, 2.1, -1.57383333333333),
];

import type { CheckValue } from './check-value.ts';

const ROWS: ReadonlyArray<readonly [degreesOfFreedom: number, t: number]> = [
  [1, 12.7062047361747],
  [2, 4.30265272974946],
  [3, 3.18244630528371],
  [4, 2.77644510519779],
  [5, 2.57058183563632],
  [8, 2.30600413520417],
  [9, 2.26215716279821],
  [10, 2.22813885198627],
  [12, 2.17881282966723],
  [20, 2.08596344726586],
  [30, 2.04227245630124],
  [100, 1.98397151852355],
  [1e4, 1.96020123988807],
  [1e6, 1.95996635681411],
  [1e8, 1.95996400826277],
  [1e12, 1.95996398454243],
  [1e16, 1.95996398454005],
  [1e20, 1.95996398454005],
  [Number.POSITIVE_INFINITY, 1.95996398454005],
];

/** The 0.975 quantile of Student's t. Degrees of freedom in the millions come up wherever scatter is small. */
export const T_975: readonly CheckValue<number>[] = ROWS.map(([degreesOfFreedom, expected]) => ({
  label: `t(0.975, ${degreesOfFreedom})`,
  arguments: degreesOfFreedom,
  expected,
  tolerance: 1e-6,
  because: 'coverage factors are good to six decimals; more does not show in any figure',
  source:
    degreesOfFreedom < 1000
      ? 'the density integrated and the equation solved with 30 digits'
      : 'expansion z + (z³ + z) / 4ν + (5z⁵ + 16z³ + 3z) / 96ν² about the normal quantile, with 40 digits',
  verified: 'computed',
}));

/** The same as printed, with two decimals, in JCGM 100:2008, table G.2. */
export const TABLE_G2: readonly CheckValue<number>[] = [
  {
    label: 'table G.2, 95 %, 8 degrees of freedom',
    arguments: 8,
    expected: 2.31,
    tolerance: 0.005,
    because: 'the table has two decimals',
    source: 'JCGM 100:2008, table G.2',
    verified: 'memory',
  },
];

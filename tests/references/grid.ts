import type { CheckValue } from './check-value.ts';

/** Nine points with a hot middle, mW/cm². */
export const HOT_MIDDLE = [
  [80, 100, 80],
  [100, 140, 100],
  [80, 100, 80],
] as const;

type GridStatistic = 'mean' | 'lowestToMean' | 'highestToMean' | 'variation';

const row = (of: GridStatistic, expected: number, tolerance: number, digits: string): CheckValue<GridStatistic> => ({
  label: `hot middle, ${of}`,
  arguments: of,
  expected,
  tolerance,
  because: `the expected value is rounded to ${digits}`,
  source: 'plain arithmetic; lowest over mean is the uniformity U0 of EN 12464-1 (from memory)',
  verified: 'computed',
});

/** What the nine points give with equal weights; ratios in %. */
export const GRID_STATISTICS: readonly CheckValue<GridStatistic>[] = [
  row('mean', 95.556, 5e-4, 'three decimals'),
  row('variation', 20.3405, 5e-5, 'four decimals'),
  row('lowestToMean', 83.7209, 5e-5, 'four decimals'),
  row('highestToMean', 146.5116, 5e-5, 'four decimals'),
];

/** The mean by cells, by how far the outer points lie inside, as a share of the field's side. */
export const CELL_MEANS: readonly CheckValue<{ insetShare: number }>[] = [
  {
    label: 'points on the edges: trapezoidal weights 1 2 1 / 2 4 2 / 1 2 1',
    arguments: { insetShare: 0 },
    expected: 105,
    tolerance: 1e-10,
    because: 'rounding of nine products',
    source: 'trapezoidal rule in two dimensions',
    verified: 'computed',
  },
  {
    label: 'points in the middle of equal cells: the plain mean (midpoint rule)',
    arguments: { insetShare: 1 / 6 },
    expected: 95.555555555556,
    tolerance: 1e-10,
    because: 'rounding of nine products',
    source: 'midpoint rule in two dimensions',
    verified: 'computed',
  },
];

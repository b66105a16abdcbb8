import { median } from 'simple-statistics';
import { OUTLIER_Z, SMALLEST_OUTLIER } from '../thresholds.ts';
import { medianPolish } from './median-polish.ts';
import { modifiedZScale } from './modified-z.ts';

/** Fewer points have no spread worth the name. */
const FEWEST_POINTS = 5;

/** A point of the grid beside what its row and column make likely. */
export interface ControlledPoint {
  /** Place in the grid, row by row. */
  index: number;
  /** Mean of its accepted readings, mW/cm2. */
  value: number;
  /** What its row and column make likely, mW/cm2. */
  likely: number;
  /** Beyond these it is odd, mW/cm2. */
  limits: readonly [low: number, high: number];
  /** Its modified z-score. */
  z: number;
  isOdd: boolean;
}

/**
 * The points of a grid against what their rows and columns make likely (Iglewicz–Hoaglin modified z-score).
 *
 * The centre of a sound panel is brighter than its corners, so plain readings are no sample of one thing. With
 * at least three rows and columns, what is scored is the logarithm of each reading less its row and column effect
 * (median polish): light from a regular field falls off nearly as a product of the two. A score counts only
 * where the reading also lies a tenth or more from what its row and column make likely: in a very regular grid
 * even the reader's own hand would otherwise stand out.
 *
 * @param points mean of the accepted readings of each point, row by row; null where there is none
 * @returns nothing where there are too few
 */
export function gridControl(points: ReadonlyArray<number | null>, columns: number): ControlledPoint[] {
  const accepted = points.flatMap((value, index) => (value === null ? [] : [{ value, index }]));
  if (accepted.length < FEWEST_POINTS) return [];
  const rows = points.length / columns;
  const logarithms = points.map((value) => (value === null ? null : Math.log(value)));
  const table = Array.from({ length: rows }, (_, i) => logarithms.slice(i * columns, (i + 1) * columns));
  const isTable = rows >= 3 && columns >= 3;
  const residuals = (isTable ? medianPolish(table).flat() : centred(logarithms)).filter((it) => it !== null);
  const { centre, sigma } = modifiedZScale(residuals);
  const reach = OUTLIER_Z * sigma;
  return accepted.map(({ value, index }, i): ControlledPoint => {
    const residual = residuals[i];
    if (residual === undefined) throw new RangeError('a point of the grid has no score');
    const likely = value / Math.exp(residual);
    const z = sigma === 0 ? 0 : (residual - centre) / sigma;
    return {
      index,
      value,
      likely,
      limits: [
        likely * Math.min(Math.exp(centre - reach), 1 - SMALLEST_OUTLIER),
        likely * Math.max(Math.exp(centre + reach), 1 + SMALLEST_OUTLIER),
      ],
      z,
      isOdd: Math.abs(z) > OUTLIER_Z && Math.abs(value / likely - 1) >= SMALLEST_OUTLIER,
    };
  });
}

/** A single row or column has no table to polish: less the median. */
function centred(values: ReadonlyArray<number | null>): Array<number | null> {
  const middle = median(values.filter((it) => it !== null));
  return values.map((it) => (it === null ? null : it - middle));
}

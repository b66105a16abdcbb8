import { median } from 'simple-statistics';
import { medianPolish } from '../irradiance/median-polish.ts';
import { modifiedZScores } from '../irradiance/modified-z.ts';
import { OUTLIER_Z, SMALLEST_OUTLIER } from '../thresholds.ts';
import type { Check, RaisedFlag } from './check.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** Column and row from 1; what was read and what is likely there, mW/cm²; the modified z-score and its limit. */
    'grid-point-outlier': { column: number; row: number; value: number; likely: number; z: number; limit: number };
  }
}

/** Fewer points have no spread worth the name. */
const FEWEST_POINTS = 5;

/**
 * A grid point far from the rest (Iglewicz–Hoaglin modified z-score).
 *
 * The centre of a sound panel is brighter than its corners, so plain readings are no sample of one thing. With
 * at least two rows and columns, what is scored is the logarithm of each reading less its row and column effect
 * (median polish): light from a regular field falls off nearly as a product of the two. A score counts only
 * where the reading also lies a tenth or more from what its row and column make likely: in a very regular grid
 * even the reader's own hand would otherwise stand out.
 */
export const gridOutlier: Check = {
  id: 'grid-outlier',
  run({ gridPoints, gridColumns }) {
    const accepted = gridPoints.flatMap((value, index) => (value === null ? [] : [{ value, index }]));
    if (accepted.length < FEWEST_POINTS) return [];
    const rows = gridPoints.length / gridColumns;
    const logarithms = gridPoints.map((value) => (value === null ? null : Math.log(value)));
    const table = Array.from({ length: rows }, (_, i) => logarithms.slice(i * gridColumns, (i + 1) * gridColumns));
    const isTable = rows >= 3 && gridColumns >= 3;
    const residuals = (isTable ? medianPolish(table).flat() : centred(logarithms)).filter((it) => it !== null);
    const scores = modifiedZScores(residuals);
    return accepted.flatMap(({ value, index }, i): RaisedFlag[] => {
      const [z, residual] = [scores[i], residuals[i]];
      if (z === undefined || residual === undefined) throw new RangeError('a point of the grid has no score');
      const likely = value / Math.exp(residual);
      if (Math.abs(z) <= OUTLIER_Z || Math.abs(value / likely - 1) < SMALLEST_OUTLIER) return [];
      const row = Math.floor(index / gridColumns) + 1;
      const column = (index % gridColumns) + 1;
      return [
        {
          severity: 'doubt',
          finding: { code: 'grid-point-outlier', column, row, value, likely, z, limit: OUTLIER_Z },
          concerns: ['mean-irradiance'],
          at: ['session', 'grid', 'rows', row - 1, column - 1],
        },
      ];
    });
  },
};

/** A single row or column has no table to polish: less the median. */
function centred(values: ReadonlyArray<number | null>): Array<number | null> {
  const middle = median(values.filter((it) => it !== null));
  return values.map((it) => (it === null ? null : it - middle));
}

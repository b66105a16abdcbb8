import { gridControl } from '../irradiance/grid-control.ts';
import { OUTLIER_Z } from '../thresholds.ts';
import type { Check, RaisedFlag } from './check.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** Column and row from 1; what was read and what is likely there, mW/cm²; the modified z-score and its limit. */
    'grid-point-outlier': { column: number; row: number; value: number; likely: number; z: number; limit: number };
  }
}

/** A grid point far from what its row and column make likely (`gridControl`). */
export const gridOutlier: Check = {
  id: 'grid-outlier',
  run: ({ gridPoints, gridColumns }) =>
    gridControl(gridPoints, gridColumns).flatMap(({ index, value, likely, z, isOdd }): RaisedFlag[] => {
      if (!isOdd) return [];
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
    }),
};

import { median } from 'simple-statistics';
import { medianPolish } from '../irradiance/median-polish.ts';
import { modifiedZScores } from '../irradiance/modified-z.ts';
import { OUTLIER_Z, SMALLEST_OUTLIER } from '../thresholds.ts';
import { type Check, words } from './check.ts';

/** Fewer points have no spread worth the name. */
const FEWEST_POINTS = 5;

/**
 * The centre of a sound panel is brighter than its corners, so plain readings are no sample of one thing. With
 * at least two rows and columns, what is scored is the logarithm of each reading less its row and column effect
 * (median polish): light from a regular field falls off nearly as a product of the two. A score counts only
 * where the reading also lies a tenth or more from what its row and column make likely: in a very regular grid
 * even the reader's own hand would otherwise stand out.
 */
export const gridOutlier: Check = {
  id: 'grid-outlier',
  guards: 'A grid point far from the rest (Iglewicz–Hoaglin modified z-score).',
  run({ gridPoints, gridColumns }) {
    const accepted = gridPoints.flatMap((value, index) => (value === null ? [] : [{ value, index }]));
    if (accepted.length < FEWEST_POINTS) return [];
    const rows = gridPoints.length / gridColumns;
    const logarithms = gridPoints.map((value) => (value === null ? null : Math.log(value)));
    const table = Array.from({ length: rows }, (_, i) => logarithms.slice(i * gridColumns, (i + 1) * gridColumns));
    const isTable = rows >= 3 && gridColumns >= 3;
    const residuals = (isTable ? medianPolish(table).flat() : centred(logarithms)).filter((it) => it !== null);
    const scores = modifiedZScores(residuals);
    return accepted.flatMap(({ value, index }, i) => {
      const z = scores[i] as number;
      const likely = value / Math.exp(residuals[i] as number);
      if (Math.abs(z) <= OUTLIER_Z || Math.abs(value / likely - 1) < SMALLEST_OUTLIER) return [];
      const row = Math.floor(index / gridColumns) + 1;
      const column = (index % gridColumns) + 1;
      return [
        {
          check: 'grid-outlier',
          severity: 'doubt' as const,
          finding: `Grid point ${column} of row ${row} reads ${words(value)} mW/cm² where its row and column make ${words(likely)} mW/cm² likely (modified z-score ${words(z)}, limit ${OUTLIER_Z}). A hot or dead spot, or a slip of the hand: read it again.`,
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

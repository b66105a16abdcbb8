import { median } from 'simple-statistics';

/** Sweeps over rows and columns; the polish settles in two or three. */
const SWEEPS = 10;

/**
 * Residuals of a table after Tukey's median polish: what is left of each value when an overall level, a row
 * effect and a column effect are taken off by medians, which a single odd value does not move.
 *
 * Source: Tukey 1977, Exploratory Data Analysis (from memory).
 *
 * @param table rows of values, all of one length; null where a value is missing
 */
export function medianPolish(table: ReadonlyArray<ReadonlyArray<number | null>>): Array<Array<number | null>> {
  const residuals = table.map((row) => [...row]);
  const columns = residuals[0]?.length ?? 0;
  const take = (cells: ReadonlyArray<[number, number]>): number => {
    const values = cells.flatMap(([i, j]) => residuals[i]?.[j] ?? []);
    if (values.length === 0) return 0;
    const effect = median(values);
    for (const [i, j] of cells) {
      const row = residuals[i] as Array<number | null>;
      const value = row[j];
      if (value !== null && value !== undefined) row[j] = value - effect;
    }
    return Math.abs(effect);
  };
  const lines = [
    ...residuals.map((_, i) => Array.from({ length: columns }, (_, j): [number, number] => [i, j])),
    ...Array.from({ length: columns }, (_, j) => residuals.map((_, i): [number, number] => [i, j])),
  ];
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    let moved = 0;
    for (const cells of lines) moved += take(cells);
    if (moved < 1e-12) break;
  }
  return residuals;
}

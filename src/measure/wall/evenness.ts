import { at } from '../at.ts';

/** Values of a plane in rows from the top, over real sides in cm. */
export interface PlaneValues {
  columns: number;
  rows: number;
  width: number;
  height: number;
  values: ArrayLike<number>;
}

/** Side of the squares that a picture is averaged over, cm: about a sensor's diffuser. Our own choice. */
export const CELL = 2;
/** A hand's width, cm: what a drop is looked for within. Our own choice. */
export const HAND = 10;
/** Fewest pixels across a square; with fewer there is nothing to average. */
export const FEWEST_PIXELS = 3;

/** Means over squares of about `CELL`, in rows from the top, and how far noise moves one of them. */
export interface Cells {
  columns: number;
  rows: number;
  /** Sides of one, cm. */
  across: number;
  down: number;
  means: Float64Array;
  /** Standard uncertainty of one square's mean by the noise of its pixels. */
  noise: number;
}

/** Undefined where the plane is too small, or its pixels too coarse. */
export function cellsOf({ columns, rows, width, height, values }: PlaneValues): Cells | undefined {
  const many = { columns: Math.floor(width / CELL + 1e-9), rows: Math.floor(height / CELL + 1e-9) };
  if (many.columns < 2 || many.rows < 2) return undefined;
  if (columns < FEWEST_PIXELS * many.columns || rows < FEWEST_PIXELS * many.rows) return undefined;
  const sums = new Float64Array(many.columns * many.rows);
  const counts = new Float64Array(sums.length);
  // The second difference of neighbours sees noise and hardly the light: its variance is six times that of a pixel.
  let curved = 0;
  let curves = 0;
  for (let row = 0; row < rows; row += 1) {
    const down = Math.floor((row * many.rows) / rows);
    for (let column = 0; column < columns; column += 1) {
      const place = row * columns + column;
      const value = at(values, place);
      const cell = down * many.columns + Math.floor((column * many.columns) / columns);
      sums[cell] = at(sums, cell) + value;
      counts[cell] = at(counts, cell) + 1;
      if (column < 2) continue;
      curved += (value - 2 * at(values, place - 1) + at(values, place - 2)) ** 2;
      curves += 1;
    }
  }
  const pixel = Math.sqrt(curved / Math.max(1, curves) / 6);
  return {
    ...many,
    across: width / many.columns,
    down: height / many.rows,
    means: sums.map((sum, i) => sum / at(counts, i)),
    noise: pixel / Math.sqrt((columns * rows) / sums.length),
  };
}

/** Two squares between which the light falls off, as middles in cm from the upper left. */
export interface Drop {
  /** 1 less the dim one's share of the bright one, 0 to 1. */
  share: number;
  bright: readonly [number, number];
  dim: readonly [number, number];
}

/** How even a plane is. */
export interface Evenness {
  mean: number;
  /** Dimmest square over the mean of all. */
  lowestToMean: number;
  highestToMean: number;
  /** Standard deviation (n - 1) over the squares, over the mean. */
  variation: number;
  /** The largest fall within a hand's width. */
  drop: Drop;
}

/** Undefined where there is no light at all. */
export function evennessOf(cells: Cells): Evenness | undefined {
  const { means } = cells;
  const mean = means.reduce((sum, it) => sum + it, 0) / means.length;
  if (!(mean > 0)) return undefined;
  const squares = means.reduce((sum, it) => sum + (it - mean) ** 2, 0);
  return {
    mean,
    lowestToMean: Math.min(...means) / mean,
    highestToMean: Math.max(...means) / mean,
    variation: Math.sqrt(squares / (means.length - 1)) / mean,
    drop: largestDrop(cells),
  };
}

function largestDrop({ columns, rows, across, down, means }: Cells): Drop {
  const reachX = Math.floor(HAND / across + 1e-9);
  const reachY = Math.floor(HAND / down + 1e-9);
  let found = { share: 0, bright: 0, dim: 0 };
  means.forEach((here, place) => {
    const [column, row] = [place % columns, Math.floor(place / columns)];
    for (let y = Math.max(0, row - reachY); y <= Math.min(rows - 1, row + reachY); y += 1) {
      for (let x = Math.max(0, column - reachX); x <= Math.min(columns - 1, column + reachX); x += 1) {
        if (Math.hypot((x - column) * across, (y - row) * down) > HAND + 1e-9) continue;
        const other = y * columns + x;
        const share = here > 0 ? 1 - at(means, other) / here : 0;
        if (share > found.share) found = { share, bright: place, dim: other };
      }
    }
  });
  const middle = (place: number) =>
    [((place % columns) + 0.5) * across, (Math.floor(place / columns) + 0.5) * down] as const;
  return { share: found.share, bright: middle(found.bright), dim: middle(found.dim) };
}

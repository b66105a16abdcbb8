import { mean } from 'simple-statistics';
import { at } from '../at.ts';
import { USUAL_HALF_GAP } from './assumed-emitter.ts';
import { lambertianExponent } from './beam.ts';
import { emitterParts, type Field } from './emitter.ts';
import { exponentNodes } from './gaussian-sum.ts';
import { planeModel } from './plane-model.ts';
import { type GridShape, gridSpots } from './plane-spots.ts';

/** Half angles of the beams that a panel may have before anything is read, degrees: our own choice of what lenses of the trade throw. */
export const TYPICAL_HALF_ANGLES = [15, 30, 45, 60] as const;

/** How far a grid would miss the true mean over the LED field, as a fraction: from the beam that makes it least to the one that makes it most. */
export interface BiasRange {
  from: number;
  to: number;
}

/**
 * What the plain mean of a grid's points would say over the true mean of the LED field, less one, for an evenly lit
 * field whose light reaches `USUAL_HALF_GAP` past its edges, over `TYPICAL_HALF_ANGLES`: what there is to expect before
 * a reading is taken. Method: the page on sampling bias.
 *
 * @param field cm
 * @param grid inset in cm
 * @param distance of the plane, cm
 * @returns undefined where the field is too small for the inset
 */
export function expectedBias(field: Field, grid: GridShape, distance: number): BiasRange | undefined {
  const spots = gridSpots(grid, field);
  if (!spots) return undefined;
  const parts = emitterParts({ kind: 'continuous', beyond: USUAL_HALF_GAP }, field);
  const plane = planeModel(parts, field, spots);
  const values = new Float64Array(spots.length + 1);
  const biases = TYPICAL_HALF_ANGLES.map((halfAngle) => {
    plane.fill(exponentNodes(lambertianExponent(halfAngle)), distance, values);
    return mean(Array.from(values.subarray(1))) / at(values, 0) - 1;
  });
  return { from: Math.min(...biases), to: Math.max(...biases) };
}

/** The farther end of a range, without its sign. */
export const worstOf = ({ from, to }: BiasRange) => Math.max(Math.abs(from), Math.abs(to));

/** A way to read that misses less, and what it costs. */
export interface BetterGrid {
  grid: GridShape;
  bias: BiasRange;
  /** Points more than the grid that it is held against; none or fewer where the inset alone does it. */
  extra: number;
}

/** Most points along one side, and in all, that are worth reading by hand: our own choice. */
const MOST_ALONG = 8;
const MOST_POINTS = 40;
/** Insets that are tried, as parts of the shorter side, rounded to mm; and the given one. */
const INSET_PARTS = [0.08, 0.1, 0.125, 1 / 6, 0.2, 0.25];

/**
 * What halves the worst bias at the least cost, one thing changed at a time: the inset of the same grid, and the number
 * of points at the same inset. Each is left out where nothing that was tried does it; of equally many points the grid
 * that misses least.
 */
export function halvingBias(
  field: Field,
  grid: GridShape,
  distance: number,
): { inset?: BetterGrid; points?: BetterGrid } {
  const now = expectedBias(field, grid, distance);
  if (!now) return {};
  const wanted = worstOf(now) / 2;
  const tried = (one: GridShape): BetterGrid[] => {
    const bias = expectedBias(field, one, distance);
    const extra = one.columns * one.rows - grid.columns * grid.rows;
    return bias && worstOf(bias) <= wanted ? [{ grid: one, bias, extra }] : [];
  };
  const cheapest = (them: BetterGrid[]) =>
    them.toSorted((a, b) => a.extra - b.extra || worstOf(a.bias) - worstOf(b.bias))[0];

  const shorter = Math.min(field.width, field.height);
  const insets = [...new Set(INSET_PARTS.map((it) => Math.round(10 * it * shorter) / 10))].filter((it) => it >= 0.3);
  const inset = cheapest(insets.flatMap((it) => tried({ ...grid, inset: it })));

  const shapes: GridShape[] = [];
  for (let columns = grid.columns; columns <= MOST_ALONG; columns++) {
    for (let rows = grid.rows; rows <= MOST_ALONG; rows++) {
      if (columns * rows <= MOST_POINTS) shapes.push({ ...grid, columns, rows });
    }
  }
  const points = cheapest(shapes.flatMap(tried));
  return { ...(inset && { inset }), ...(points && { points }) };
}

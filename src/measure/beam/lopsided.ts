import { Matrix, pseudoInverse } from 'ml-matrix';
import { at } from '../at.ts';
import type { Readings } from './error-sources.ts';
import type { Layout } from './panel-sums.ts';

/**
 * How far a point of the grid may lie from the mirror images of it, over the mean of the grid, once a slope across and one
 * down are taken away, and three standard uncertainties of its own. Our own choice, from simulated panels: none of 1,500
 * whose LEDs all shine, be they 20 % weaker along one side or 8 % apart from LED to LED, goes so far.
 */
export const MOST_LOPSIDED = 0.03;

const OWN = 3;

/**
 * How lopsided the readings of a grid are, from 0: beams, patterns of drive and places of LEDs that are thought possible
 * are alike on both sides of a field, apart from a slope. Light that is not, as from a panel with a dark corner or a
 * bright spot off its middle, is explained by none of them, though a narrow beam between the points can take its shape.
 *
 * @param grid which points were read, and what was read there, in their order
 */
export function lopsidedness({ shape, accepted }: NonNullable<Layout['grid']>, grid: Readings): number {
  const { columns, rows } = shape;
  // Points that are mirror images of one another have one level.
  const levels = new Map<string, number>();
  const places = accepted.map((point) => {
    const [i, j] = [point % columns, Math.floor(point / columns)];
    const [x, y] = [i - (columns - 1) / 2, j - (rows - 1) / 2];
    const name = `${Math.abs(x)} ${Math.abs(y)}`;
    const level = levels.get(name) ?? levels.size;
    levels.set(name, level);
    return { x, y, level };
  });
  const equations = Matrix.zeros(places.length, levels.size + 2);
  places.forEach(({ x, y, level }, n) => {
    equations.set(n, level, 1);
    equations.set(n, levels.size, x);
    equations.set(n, levels.size + 1, y);
  });
  const values = Matrix.columnVector([...grid.values]);
  // A grid of one column has no slope across, so that there may be more unknowns than equations.
  const left = Matrix.sub(values, equations.mmul(pseudoInverse(equations).mmul(values)));
  const mean = values.mean();
  return places.reduce((most, _, n) => {
    const own = Math.hypot(at(grid.scatter, n), at(grid.rounding, n));
    return Math.max(most, (Math.abs(left.get(n, 0)) - OWN * own) / mean);
  }, 0);
}

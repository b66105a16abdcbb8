import type { GridGeometry } from './grid-geometry.ts';

/** A point of the grid on the way of the sensor. */
export interface RoutePoint {
  /** Place in the grid's rows: from the top, then from the left. */
  row: number;
  column: number;
  /** cm from the left edge of the LED field as one faces it. */
  x: number;
  /** cm from its top edge. */
  y: number;
}

/**
 * The order in which the sensor passes every point of a grid with the fewest centimetres of travel, from the upper left
 * point on: to and fro along the way on which neighbours are nearer, by rows where both are alike.
 *
 * No way is shorter. One that reaches all points has as many steps as the tree that joins them at the least length; in a
 * grid that tree runs along every line of the nearer way, and crosses between lines once each, as this does.
 */
export function pointRoute({ x, y }: Pick<GridGeometry, 'x' | 'y'>): RoutePoint[] {
  const byRows = gap(x) <= gap(y);
  const lines = byRows ? y.length : x.length;
  const along = byRows ? x.length : y.length;
  const route: RoutePoint[] = [];
  for (let line = 0; line < lines; line++) {
    for (let i = 0; i < along; i++) {
      const place = line % 2 === 0 ? i : along - 1 - i;
      const [row, column] = byRows ? [line, place] : [place, line];
      route.push({ row, column, x: x[column] as number, y: y[row] as number });
    }
  }
  return route;
}

/** From one place to the next, cm; those of a grid are evenly set. A single one has no neighbour to be near to. */
const gap = ([first, second]: readonly number[]) =>
  first === undefined || second === undefined ? Number.POSITIVE_INFINITY : second - first;

/** cm that the sensor is moved along a way. */
export function travel(route: readonly Pick<RoutePoint, 'x' | 'y'>[]): number {
  return route.slice(1).reduce((sum, { x, y }, i) => {
    const before = route[i] as Pick<RoutePoint, 'x' | 'y'>;
    return sum + Math.hypot(x - before.x, y - before.y);
  }, 0);
}

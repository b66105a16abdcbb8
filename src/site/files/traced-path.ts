import simplify from 'simplify-js';
import { pathThrough } from '../shared/browser/path-data.ts';
import { pixels } from '../shared/browser/plot.ts';

/** How far a drawn line may pass by a point, px: less than a screen shows. */
const WITHIN = 0.15;

/**
 * A line through many points as the data of an SVG path. Points that the line passes all the same are left out (Douglas and
 * Peucker), so that no tip is lost.
 *
 * @param points in CSS pixels; they count to a tenth
 */
export function tracedPath(points: ReadonlyArray<readonly [x: number, y: number]>): string {
  const places = points.map(([x, y]) => ({ x: pixels(x), y: pixels(y) }));
  return pathThrough(simplify(places, WITHIN, true).map(({ x, y }) => [x, y] as const));
}

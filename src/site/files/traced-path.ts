import simplify from 'simplify-js';
import { pixels } from '../shared/browser/plot.ts';

/** How far a drawn line may pass by a point, px: less than a screen shows. */
const WITHIN = 0.15;

/**
 * A line through many points as the data of an SVG path, in steps from one point to the next, which take half the room of
 * places. Points that the line passes all the same are left out (Douglas and Peucker), so that no tip is lost.
 *
 * @param points in CSS pixels; they count to a tenth
 */
export function tracedPath(points: ReadonlyArray<readonly [x: number, y: number]>): string {
  const places = points.map(([x, y]) => ({ x: pixels(x), y: pixels(y) }));
  const [first, ...others] = simplify(places, WITHIN, true);
  if (!first) return '';
  let { x, y } = first;
  let path = `M${x},${y}`;
  others.forEach((to, i) => {
    // Both ends are whole tenths, so that no error adds up.
    path += `${i === 0 ? 'l' : ''}${joined(short(to.x - x), i === 0 ? '' : ' ')}${joined(short(to.y - y), ',')}`;
    ({ x, y } = to);
  });
  return path;
}

/** `-.5` for `-0.5` */
const short = (length: number) => String(pixels(length)).replace(/^(-?)0\./, '$1.');

/** A minus parts two numbers by itself. */
const joined = (number: string, separator: string) => (number.startsWith('-') ? number : `${separator}${number}`);

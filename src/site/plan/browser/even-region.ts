/** Where a map of light lies above a level, as paths of a drawing. No DOM. */
import type { BodyMap } from '../../../measure/beam/body-map.ts';

/** The area, to be filled, and its edge within the map, to be drawn as a line. */
export interface EvenRegion {
  area: string;
  edge: string;
}

interface Corner {
  x: number;
  y: number;
  value: number;
}

/**
 * The part of a map that has at least `level`, its edge laid straight between the middles of cells; beyond the outermost
 * middles the map goes on as it is there.
 *
 * @param place left, top, width and height of the map in the drawing
 */
export function evenRegion(
  { values, columns, rows }: Pick<BodyMap, 'values' | 'columns' | 'rows'>,
  level: number,
  place: { left: number; top: number; width: number; height: number },
): EvenRegion {
  const corner = (i: number, j: number): Corner => ({
    x: place.left + place.width * part(i, columns),
    y: place.top + place.height * part(j, rows),
    value: values[held(j, rows) * columns + held(i, columns)] ?? 0,
  });
  const isIn = (it: Corner) => it.value >= level;
  const [area, edge]: [string[], string[]] = [[], []];
  for (let j = 0; j <= rows; j++) {
    // Squares that lie within it side by side are one piece.
    let start: number | undefined;
    for (let i = 0; i <= columns + 1; i++) {
      const square = i > columns ? [] : [corner(i, j), corner(i + 1, j), corner(i + 1, j + 1), corner(i, j + 1)];
      if (square.length > 0 && square.every(isIn)) {
        start ??= i;
        continue;
      }
      if (start !== undefined)
        area.push(closed([corner(start, j), corner(i, j), corner(i, j + 1), corner(start, j + 1)]));
      start = undefined;
      const { inside, crossings } = cut(square, level);
      if (inside.length > 0) area.push(closed(inside));
      for (let k = 0; k + 1 < crossings.length; k += 2)
        edge.push(
          `M${crossings
            .slice(k, k + 2)
            .map(point)
            .join('L')}`,
        );
    }
  }
  return { area: area.join(''), edge: edge.join('') };
}

/** What of a square lies at the level or above, and where its sides cross the level. */
function cut(square: readonly Corner[], level: number): { inside: Corner[]; crossings: Corner[] } {
  const [inside, crossings]: [Corner[], Corner[]] = [[], []];
  for (const [k, from] of square.entries()) {
    const to = square[(k + 1) % square.length] ?? from;
    if (from.value >= level) inside.push(from);
    if (from.value >= level === to.value >= level) continue;
    const t = (level - from.value) / (to.value - from.value);
    const crossing = { x: from.x + t * (to.x - from.x), y: from.y + t * (to.y - from.y), value: level };
    inside.push(crossing);
    crossings.push(crossing);
  }
  return { inside, crossings };
}

/** Where the middle of the i-th of `count` cells lies, from 1; the ends of them all before and behind. */
const part = (i: number, count: number) => Math.min(1, Math.max(0, (i - 0.5) / count));
/** The cell that a corner has its value from. */
const held = (i: number, count: number) => Math.min(count - 1, Math.max(0, i - 1));

const closed = (corners: readonly Corner[]) => `M${corners.map(point).join('L')}Z`;
const point = ({ x, y }: Corner) => `${Number(x.toFixed(1))} ${Number(y.toFixed(1))}`;

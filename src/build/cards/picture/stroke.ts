import type { Point } from './cover.ts';

/** Corners sharper than that are cut off: SVG's limit of a corner's length over the line's width. */
const LONGEST_CORNER = 4;

/**
 * A line through points as polygons that all turn the same way, with sharp corners and ends that are cut straight, as SVG
 * has them unless told otherwise.
 *
 * @param points a closed line ends where it begins
 * @param dashes lengths of strokes and gaps in turn; none for a whole line
 */
export function strokePolygons(points: readonly Point[], width: number, dashes: readonly number[]): Point[][] {
  const pieces = dashes.length > 0 ? dashed(points, dashes) : [points];
  return pieces.flatMap((it) => strokedLine(it, width / 2));
}

interface Side {
  from: Point;
  to: Point;
  /** Half of the width, to the left of its direction. */
  across: Point;
}

function strokedLine(points: readonly Point[], half: number): Point[][] {
  const sides: Side[] = [];
  for (const [i, from] of points.slice(0, -1).entries()) {
    const to = points[i + 1] as Point;
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    if (length > 0)
      sides.push({ from, to, across: [((from[1] - to[1]) / length) * half, ((to[0] - from[0]) / length) * half] });
  }
  const first = points[0];
  const last = points.at(-1);
  const isClosed = points.length > 2 && first?.[0] === last?.[0] && first?.[1] === last?.[1];
  return sides.flatMap((side, i) => {
    const { from, to, across } = side;
    const next = sides[i + 1] ?? (isClosed ? sides[0] : undefined);
    const bar: Point[] = [plus(from, across, 1), plus(to, across, 1), plus(to, across, -1), plus(from, across, -1)];
    return [bar, ...(next ? corner(side, next, half) : [])].map(turned);
  });
}

/** What is missing on the outer side of a corner. */
function corner({ to, across: one }: Side, { across: two }: Side, half: number): Point[][] {
  const turn = one[0] * two[1] - one[1] * two[0];
  // 1 where the line goes straight on, -1 where it goes back.
  const along = (one[0] * two[0] + one[1] * two[1]) / half ** 2;
  if (turn === 0 || along < -0.999) return [];
  const out = turn > 0 ? -1 : 1;
  const isSharp = Math.sqrt(2 / (1 + along)) <= LONGEST_CORNER;
  const tip: Point = [(one[0] + two[0]) / (1 + along), (one[1] + two[1]) / (1 + along)];
  return [[to, plus(to, one, out), ...(isSharp ? [plus(to, tip, out)] : []), plus(to, two, out)]];
}

/** The parts of a line that are drawn. */
function dashed(points: readonly Point[], dashes: readonly number[]): Point[][] {
  const [start] = points;
  if (!start || !dashes.some((it) => it > 0)) return [];
  const parts: Point[][] = [[start]];
  let [number, left] = [0, dashes[0] ?? 0];
  for (const [i, [toX, toY]] of points.slice(1).entries()) {
    let [x, y] = points[i] as Point;
    let length = Math.hypot(toX - x, toY - y);
    while (length > left) {
      [x, y] = [x + ((toX - x) * left) / length, y + ((toY - y) * left) / length];
      length -= left;
      if (number % 2 === 0) parts.at(-1)?.push([x, y]);
      else parts.push([[x, y]]);
      number += 1;
      left = dashes[number % dashes.length] ?? 0;
    }
    left -= length;
    if (number % 2 === 0) parts.at(-1)?.push([toX, toY]);
  }
  return parts.filter((it) => it.length > 1);
}

const plus = ([x, y]: Point, [dx, dy]: Point, times: number): Point => [x + times * dx, y + times * dy];

/** The same polygon, its corners in the order in which its area is positive. */
export function turned(polygon: Point[]): Point[] {
  let area = 0;
  let [x0, y0] = polygon.at(-1) ?? [0, 0];
  for (const [x, y] of polygon) {
    area += x0 * y - x * y0;
    [x0, y0] = [x, y];
  }
  return area < 0 ? polygon.reverse() : polygon;
}

/** Data of SVG paths in as few letters as they need: pages hold many of them. Lengths to a tenth. No DOM. */

type Point = readonly [x: number, y: number];

const TENTHS = 10;

/** A whole number of tenths as SVG reads it: without a nought before its point. */
function tenths(value: number): string {
  const size = Math.abs(value);
  const [whole, rest] = [Math.floor(size / TENTHS), size % TENTHS];
  return `${value < 0 ? '-' : ''}${whole > 0 || rest === 0 ? whole : ''}${rest > 0 ? `.${rest}` : ''}`;
}

/** Steps of a path, one behind another: a minus sign divides them as well as a blank does. */
function joined(steps: readonly number[]): string {
  let text = '';
  for (const it of steps) text += `${text === '' || it < 0 ? '' : ' '}${tenths(it)}`;
  return text;
}

/** A line through points, each told from the one before it: `M0 1l2.5 2`. Nothing through no points. */
export function pathThrough(points: readonly Point[]): string {
  const [first, ...others] = points.map(([x, y]) => [Math.round(x * TENTHS), Math.round(y * TENTHS)] as const);
  if (!first) return '';
  let [fromX, fromY] = first;
  const steps = others.flatMap(([x, y]) => {
    const step = [x - fromX, y - fromY];
    [fromX, fromY] = [x, y];
    return step;
  });
  return `M${joined([...first])}${steps.length > 0 ? `l${joined(steps)}` : ''}`;
}

/**
 * A closed line that passes through the middles of a polygon's sides and rounds each corner. The curve's own corners
 * follow from its middles (`t` of SVG), so that these are rounded to where the corner is met, and no fault adds up.
 */
export function roundedPath(corners: readonly Point[]): string {
  const [first, second] = corners;
  if (!first || !second) return '';
  const whole = (it: Point) => [Math.round(it[0] * TENTHS), Math.round(it[1] * TENTHS)] as const;
  const middle = (a: Point, b: Point) => [Math.round((a[0] + b[0]) / 2), Math.round((a[1] + b[1]) / 2)] as const;
  const start = middle(whole(first), whole(second));
  let [at, corner] = [start, whole(second)];
  const steps: number[] = [];
  const lead = [corner[0] - at[0], corner[1] - at[1]];
  for (let i = 0; i < corners.length; i++) {
    const next = whole(corners[(i + 2) % corners.length] as Point);
    const to = i === corners.length - 1 ? start : middle(corner, next);
    steps.push(to[0] - at[0], to[1] - at[1]);
    corner = [2 * to[0] - corner[0], 2 * to[1] - corner[1]];
    at = to;
  }
  const [x = 0, y = 0, ...others] = steps;
  return `M${joined([...start])}q${joined([...lead, x, y])}t${joined(others)}z`;
}

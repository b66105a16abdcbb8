/** The points of a path as `tracedPath` writes it: a place, and steps from there. */
export function tracedPoints(path: string): Array<[x: number, y: number]> {
  const [first = 0, second = 0, ...steps] = [...path.matchAll(/-?(?:\d+\.?\d*|\.\d+)/g)].map(([it]) => Number(it));
  const points: Array<[number, number]> = [[first, second]];
  for (let i = 0; i + 1 < steps.length; i += 2) {
    const [x, y] = points.at(-1) as [number, number];
    points.push([tenth(x + (steps[i] as number)), tenth(y + (steps[i + 1] as number))]);
  }
  return points;
}

const tenth = (length: number) => Number(length.toFixed(1));

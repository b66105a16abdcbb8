/**
 * The points that the data of a path name, in the order of their letters: those of `M`, `l`, `q` (control and end) and
 * `t`. Written for the tests, apart from what writes such paths.
 *
 * @throws where there is another letter
 */
export function cornersOf(path: string): Array<[x: number, y: number]> {
  const points: Array<[number, number]> = [];
  let at: [number, number] = [0, 0];
  for (const [, letter = '', numbers = ''] of path.matchAll(/([a-z])([^a-z]*)/gi)) {
    if (letter === 'z') continue;
    if (!'Mlqt'.includes(letter)) throw new Error(`${letter} in ${path}`);
    const values = (numbers.match(/-?(?:\d*\.)?\d+/g) ?? []).map(Number);
    const perCurve = letter === 'q' ? 2 : 1;
    for (let i = 0; i < values.length; i += 2) {
      const from = letter === 'M' ? [0, 0] : at;
      const point: [number, number] = [
        Number(((from[0] ?? 0) + (values[i] ?? Number.NaN)).toFixed(1)),
        Number(((from[1] ?? 0) + (values[i + 1] ?? Number.NaN)).toFixed(1)),
      ];
      points.push(point);
      if ((i / 2) % perCurve === perCurve - 1) at = point;
    }
  }
  return points;
}

import { describe, expect, test } from 'vitest';
import { logPath } from '../../../src/site/files/file-plot.ts';
import { tracedPath } from '../../../src/site/files/traced-path.ts';
import { tracedPoints } from '../../support/traced-points.ts';

/** How far a point lies from a line through others, px. */
function distanceTo(line: ReadonlyArray<readonly [number, number]>, [x, y]: readonly [number, number]): number {
  return line.slice(1).reduce((least, [x2, y2], i) => {
    const [x1, y1] = line[i] as readonly [number, number];
    const length = (x2 - x1) ** 2 + (y2 - y1) ** 2;
    const share = length === 0 ? 0 : Math.min(1, Math.max(0, ((x - x1) * (x2 - x1) + (y - y1) * (y2 - y1)) / length));
    return Math.min(least, Math.hypot(x - x1 - share * (x2 - x1), y - y1 - share * (y2 - y1)));
  }, Number.POSITIVE_INFINITY);
}

describe('a traced line', () => {
  const wave = Array.from(
    { length: 600 },
    (_, i) => [50 + i / 2, 100 - 80 * Math.exp(-(((i - 300) / 40) ** 2))] as const,
  );

  test('passes every point that it was made of, less than a screen shows', () => {
    const line = tracedPoints(tracedPath(wave));
    expect(line.length).toBeLessThan(80);
    // 0.15 px left out, and a tenth of a pixel of rounding either way.
    for (const it of wave) expect(distanceTo(line, it)).toBeLessThan(0.25);
  });

  test('keeps a tip of a single point', () => {
    const spiked = wave.map(([x, y], i) => [x, i === 77 ? 3 : y] as const);
    expect(Math.min(...tracedPoints(tracedPath(spiked)).map(([, y]) => y))).toBeCloseTo(3, 6);
  });

  test('writes steps of one digit behind the comma, without the nought before it', () => {
    expect(
      tracedPath([
        [1, 2],
        [1.5, 1.25],
        [3, 4],
      ]),
    ).toBe('M1 2l.5-.7 1.5 2.7');
    expect(tracedPath([])).toBe('');
  });
});

test('a log of many readings a pixel keeps its highest and its lowest', () => {
  const count = 20_000;
  const values = Array.from({ length: count }, (_, i) => 50 + 10 * Math.sin(i / 500));
  [values[1234], values[17_001]] = [99, 1];
  const series = { times: values.map((_, i) => i), low: values, high: values };
  const path = logPath(
    series,
    (time) => (356 * time) / count,
    (value) => 200 - value,
  );
  const heights = tracedPoints(path).map(([, y]) => y);
  expect([Math.min(...heights), Math.max(...heights)]).toEqual([101, 199]);
  expect(path.length).toBeLessThan(5000);
});

import { describe, expect, test } from 'vitest';
import { pathThrough, roundedPath } from '../../../../src/site/shared/browser/path-data.ts';
import { cornersOf } from '../../../support/path-corners.ts';

describe('a line through points', () => {
  test('tells each from the one before it, and nothing of none', () => {
    const points = [
      [0, 1],
      [2.5, 3],
      [2.4, 0.7],
    ] as const;
    expect(pathThrough(points)).toBe('M0 1l2.5 2-.1-2.3');
    expect(pathThrough([[4, 5]])).toBe('M4 5');
    expect(pathThrough([])).toBe('');
  });

  test('ends where it should, however many steps there are', () => {
    const points = Array.from({ length: 500 }, (_, i) => [i / 3, 100 * Math.sin(i / 40)] as const);
    const read = cornersOf(pathThrough(points));
    expect(read).toHaveLength(500);
    for (const [i, [x, y]] of points.entries()) {
      expect(Math.abs((read[i]?.[0] ?? Number.NaN) - x)).toBeLessThan(0.051);
      expect(Math.abs((read[i]?.[1] ?? Number.NaN) - y)).toBeLessThan(0.051);
    }
  });
});

test('a rounded polygon meets the middles of its sides, and turns at its corners', () => {
  const corners = Array.from(
    { length: 61 },
    (_, i) => [100 + 37.13 * Math.cos(i / 9.7), 80 + 51.77 * Math.sin(i / 9.7)] as const,
  );
  const path = roundedPath(corners);
  const [start, ...others] = cornersOf(path);
  // One control of the first curve, then an end for each corner; the last is where it began.
  expect(others).toHaveLength(corners.length + 1);
  expect(others.at(-1)).toEqual(start);
  for (const [i, [x, y]] of corners.entries()) {
    const [nextX, nextY] = corners[(i + 1) % corners.length] ?? [Number.NaN, Number.NaN];
    const [atX, atY] = (i === 0 ? start : others[i]) ?? [Number.NaN, Number.NaN];
    expect(Math.hypot(atX - (x + nextX) / 2, atY - (y + nextY) / 2)).toBeLessThan(0.2);
  }
  expect(roundedPath([])).toBe('');
});

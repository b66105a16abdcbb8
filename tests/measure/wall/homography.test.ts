import { describe, expect, test } from 'vitest';
import { type Corners, cornersFault, sidesOf, unitSquareTo } from '../../../src/measure/wall/homography.ts';
import { projective } from '../../support/bench-files/photograph.ts';

const SEEN: Corners = [
  [412, 300],
  [3380, 318],
  [3402, 2740],
  [390, 2702],
];
const SQUARE: Corners = [
  [0, 0],
  [1, 0],
  [1, 1],
  [0, 1],
];

describe('a rectangle as a camera sees it', () => {
  test('keeps its corners', () => {
    const map = unitSquareTo(SEEN);
    SQUARE.forEach(([u, v], i) => {
      const [x, y] = map(u, v);
      expect(x).toBeCloseTo(SEEN[i]?.[0] ?? 0, 8);
      expect(y).toBeCloseTo(SEEN[i]?.[1] ?? 0, 8);
    });
  });

  test('agrees with the map that elimination gives', () => {
    const leaning: Corners = [
      [100, 50],
      [900, 200],
      [850, 700],
      [60, 820],
    ];
    const [map, other] = [unitSquareTo(leaning), projective(SQUARE, leaning)];
    for (const [u, v] of [
      [0.5, 0.5],
      [0.1, 0.9],
      [0.73, 0.21],
    ] as const) {
      expect(map(u, v)[0]).toBeCloseTo(other(u, v)[0], 8);
      expect(map(u, v)[1]).toBeCloseTo(other(u, v)[1], 8);
    }
  });

  // Vanishing to one side: edges of 2 and 1, so that the middle of the rectangle lies where the diagonals meet.
  test('puts the middle where the diagonals meet', () => {
    const [x, y] = unitSquareTo([
      [0, 0],
      [4, 1],
      [4, 2],
      [0, 3],
    ])(0.5, 0.5);
    expect(x).toBeCloseTo(3, 12);
    expect(y).toBeCloseTo(1.5, 12);
  });

  test('has sides of a mean length', () => {
    // √(2968² + 18²), √(3012² + 38²); √(2402² + 22²), √(2422² + 22²): half their sums.
    expect(sidesOf(SEEN).across).toBeCloseTo(2990.147, 3);
    expect(sidesOf(SEEN).down).toBeCloseTo(2412.1, 1);
  });
});

describe('corners', () => {
  test('go round by the clock and bulge', () => {
    const [a, b, c, d] = SEEN;
    expect(cornersFault(SEEN)).toBeUndefined();
    expect(cornersFault([d, c, b, a])).toBe('other-way-round');
    expect(cornersFault([a, c, b, d])).toBe('not-convex');
    expect(cornersFault([a, b, c, [2000, 1000]])).toBe('not-convex');
    expect(cornersFault([a, a, c, d])).toBe('not-convex');
  });
});

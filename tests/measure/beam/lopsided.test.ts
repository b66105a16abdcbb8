import { describe, expect, test } from 'vitest';
import { estimatePanel } from '../../../src/measure/beam/estimate.ts';
import { lopsidedness, MOST_LOPSIDED } from '../../../src/measure/beam/lopsided.ts';
import { KEPT_ASIDE, KINDS, LOPSIDED, simulatedCase } from '../../support/beam-study.ts';

/** Of a grid of three columns that was read without errors. */
const of = (rows: readonly (readonly number[])[], accepted = rows.flat().map((_, i) => i), own = 0) => {
  const values = accepted.map((i) => rows.flat()[i] as number);
  const none = values.map(() => 0);
  const shape = { columns: 3, rows: rows.length, inset: 2.54 };
  return lopsidedness({ shape, accepted }, { values, scatter: values.map(() => own), rounding: none });
};

const EVEN = [
  [40, 52, 40],
  [50, 66, 50],
  [40, 52, 40],
];
const CORNER = [[8, 52, 40], ...EVEN.slice(1)];
const raised = (by: (x: number, y: number) => number) =>
  EVEN.map((row, y) => row.map((it, x) => it + by(x - 1, y - 1)));

describe('a grid', () => {
  test('that is alike on both sides is not lopsided, whatever its shape; nor is one with slopes', () => {
    expect(of(EVEN)).toBeCloseTo(0, 9);
    expect(of(raised((x, y) => 5 * x - 3 * y))).toBeCloseTo(0, 9);
    expect(of([[40, 52, 44]])).toBeCloseTo(0, 9);
    expect(of([[40], [52], [44]])).toBeCloseTo(0, 9);
  });

  test('with a dark corner is, by the share of the mean that no mirror image explains', () => {
    // Half of what corners miss goes into slopes and levels: of 32, the corner's own row and column take 5/9.
    expect(of(CORNER)).toBeGreaterThan(0.2);
    // A twist: the corners on one diagonal 6 above, on the other 6 below. The mean is 47.78.
    expect(of(raised((x, y) => 6 * x * y))).toBeCloseTo(6 / (430 / 9), 9);
  });

  test('is held against its other points where some are struck', () => {
    const others = [1, 2, 3, 4, 5, 6, 7, 8];
    expect(of(CORNER, others)).toBeCloseTo(0, 9);
    expect(of([[40, 52, 8], ...EVEN.slice(1)], others)).toBeGreaterThan(0.1);
  });

  test('is not called so for what its own errors explain', () => {
    const twisted = raised((x, y) => 6 * x * y);
    expect(of(twisted, undefined, 2)).toBeCloseTo(0, 9);
    expect(of(twisted, undefined, 1)).toBeCloseTo(3 / (430 / 9), 9);
  });
});

describe('of simulated panels', () => {
  const share = (kind: string, count: number) => {
    const found = Array.from({ length: count }, (_, i) => {
      const { layout, grid } = simulatedCase(kind, i + 1).input('none');
      if (!layout.grid || !grid) throw new Error('no grid');
      return lopsidedness(layout.grid, grid) > MOST_LOPSIDED;
    });
    return found.filter(Boolean).length / count;
  };

  test('none is lopsided whose LEDs all shine', () => {
    for (const kind of [...Object.keys(KINDS), ...Object.keys(KEPT_ASIDE)]) expect(share(kind, 4), kind).toBe(0);
  });

  test('most are that are dark or bright in one place', () => {
    // Of 100 of each kind 58, 83 and 52 at the time of writing: 6 of 30 or fewer are one in 3,000 for the last (binomial).
    for (const kind of Object.keys(LOPSIDED)) expect(share(kind, 30), kind).toBeGreaterThan(0.2);
  });

  test('one with a dark corner has no beam, where the others keep theirs', () => {
    const of = (kind: string, seed: number) => estimatePanel(simulatedCase(kind, seed).input('none'));
    expect(of('dark corner', 4).withheld).toEqual({ code: 'beam-lopsided' });
    expect(of('even', 1).withheld).toBeUndefined();
  });
});

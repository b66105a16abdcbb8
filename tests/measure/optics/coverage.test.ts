import { beforeAll, describe, expect, test } from 'vitest';
import {
  type Extra,
  KEPT_ASIDE,
  KINDS,
  kendallTau,
  type Outcome,
  outcomeOf,
  simulatedCase,
} from '../../support/beam-study.ts';

/**
 * How often the 95 % intervals hold the truth, over simulated panels of many kinds whose beams and drive are none of
 * the model's own. A small sample of the study in tests/bench/beam-study.ts, which the method pages quote: a few panels
 * of each kind, the same ones each time. The tau of so few panels scatters by 0.04: the study's 0.86 and 0.97 lie about
 * that far above the lines drawn here.
 */
const EACH = 3;
const ALL = [...Object.keys(KINDS), ...Object.keys(KEPT_ASIDE)];
const NAMES = ['emitted', 'capture', 'mean30', 'peak30', 'mean60', 'peak60'] as const;

describe.each<[Extra, { halfWidth: number; tau: number }]>([
  ['none', { halfWidth: 0.4, tau: 0.81 }],
  ['beyond', { halfWidth: 0.12, tau: 0.92 }],
])('readings besides the nine points: %s', (extra, least) => {
  let all: Outcome[] = [];
  beforeAll(() => {
    all = ALL.flatMap((kind) => Array.from({ length: EACH }, (_, i) => outcomeOf(simulatedCase(kind, 101 + i), extra)));
  }, 600_000);
  const told = () => all.filter((it) => it.halfWidth !== undefined);

  test('few are withheld', () => {
    expect(told().length).toBeGreaterThanOrEqual(0.88 * all.length);
  });

  test.each(NAMES)('%s: at least 90 %% of the intervals hold', (name) => {
    const known = told().flatMap(({ holds }) => (holds[name] === undefined ? [] : [holds[name]]));
    expect(known.filter(Boolean).length / known.length).toBeGreaterThanOrEqual(0.9);
  });

  test('and they are no wider than the readings ask for', () => {
    const widths = told().map((it) => it.halfWidth as number);
    expect(widths.toSorted((a, b) => a - b)[Math.floor(widths.length / 2)]).toBeLessThan(least.halfWidth);
  });

  test('values are right on the average', () => {
    const errors = told().map((it) => it.error as number);
    expect(Math.abs(errors.reduce((sum, it) => sum + it, 0) / errors.length)).toBeLessThan(
      extra === 'none' ? 0.08 : 0.03,
    );
  });

  test('panels are ordered by price per emitted watt nearly as they truly are, and better than by the common figure', () => {
    const modelled = kendallTau(told().map(({ order }) => [order.true, order.modelled as number]));
    const common = kendallTau(told().map(({ order }) => [order.true, order.common]));
    expect(modelled).toBeGreaterThan(least.tau);
    expect(modelled).toBeGreaterThan(common + 0.1);
  });

  test('intervals that left the shape of the beam out would fail here', () => {
    const blind = told().filter(({ result, error }) => {
      const emitted = result.estimates?.emitted;
      if (!emitted) return false;
      const lines = emitted.budget.filter((it) => !/beam-shape|beam-rest/.test(it.key));
      const u = Math.hypot(...lines.map((it) => it.contribution)) / emitted.value;
      return Math.abs(error as number) <= 1.96 * u;
    });
    expect(blind.length / told().length).toBeLessThan(0.9);
  });
});

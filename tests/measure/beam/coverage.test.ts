import { beforeAll, describe, expect, test } from 'vitest';
import {
  type Case,
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
 * of each kind, the same ones each time.
 *
 * The study finds 98 % over all kinds. By the binomial law, of 30 panels that hold 97 % of the time at least 28 (93 %) do
 * with a probability of 0.94. A fall to 85 % is seen here with a probability of 0.85, one to 88 % with 0.7; one of a single
 * kind only in the study.
 */
const EACH = 2;
const LEAST = 0.93;
const ALL = [...Object.keys(KINDS), ...Object.keys(KEPT_ASIDE)];
/** Kinds whose beams and drive are the model's own, but for the room and the LEDs' differences. */
const OBEYING = ['even', 'uncounted', 'wall', 'LEDs 8 %'];
const NAMES = ['emitted', 'capture', 'mean30', 'peak30', 'mean60', 'peak60'] as const;

let cases: Case[] = [];
beforeAll(() => {
  cases = ALL.flatMap((kind) => Array.from({ length: EACH }, (_, i) => simulatedCase(kind, 101 + i)));
}, 120_000);

// The tau of 30 panels scatters by about 0.04: about two of those under the study's 0.86 and 0.97.
describe.each<[Extra, { halfWidth: number; tau: number; beforeCommon: number }]>([
  ['none', { halfWidth: 0.36, tau: 0.78, beforeCommon: 0.1 }],
  ['beyond', { halfWidth: 0.12, tau: 0.9, beforeCommon: 0.2 }],
])('readings besides the nine points: %s', (extra, { halfWidth, tau, beforeCommon }) => {
  let all: Outcome[] = [];
  beforeAll(() => {
    all = cases.map((it) => outcomeOf(it, extra));
  }, 600_000);
  const told = (kinds: readonly string[] = ALL) =>
    all.filter((it) => it.halfWidth !== undefined && kinds.includes(it.kind));

  test('few are withheld, and none of those that obey the model once they are read past the edges', () => {
    expect(told().length).toBeGreaterThanOrEqual(0.88 * all.length);
    expect(told(OBEYING).length).toBeGreaterThanOrEqual((extra === 'none' ? 0.83 : 1) * OBEYING.length * EACH);
  });

  test.each(NAMES)('%s: the intervals hold', (name) => {
    const known = told().flatMap(({ holds }) => (holds[name] === undefined ? [] : [holds[name]]));
    expect(known.filter(Boolean).length / known.length).toBeGreaterThanOrEqual(LEAST);
  });

  test('and they are no wider than the readings ask for', () => {
    const widths = told().map((it) => it.halfWidth as number);
    expect(widths.toSorted((a, b) => a - b)[Math.floor(widths.length / 2)]).toBeLessThan(halfWidth);
  });

  test('values are right on the average', () => {
    const errors = told().map((it) => it.error as number);
    expect(Math.abs(errors.reduce((sum, it) => sum + it, 0) / errors.length)).toBeLessThan(
      extra === 'none' ? 0.08 : 0.03,
    );
  });

  test('panels are ordered by price per emitted watt nearly as they truly are, and better than by the common figure', () => {
    const modelled = kendallTau(told().map(({ exponent }) => [exponent.true, exponent.modelled as number]));
    const common = kendallTau(told().map(({ exponent }) => [exponent.true, exponent.common]));
    expect(modelled).toBeGreaterThan(tau);
    expect(modelled).toBeGreaterThan(common + beforeCommon);
  });

  test('intervals that left the shape of the beam out would fail here', () => {
    const blind = told().filter(({ result, error }) => {
      const emitted = result.estimates?.emitted;
      if (!emitted) return false;
      const named = emitted.budget.filter((it) => !/beam-shape|beam-rest/.test(it.source.key));
      const u = Math.hypot(...named.map((it) => it.contribution)) / emitted.value;
      return Math.abs(error as number) <= 1.96 * u;
    });
    expect(blind.length / told().length).toBeLessThan(0.9);
  });
});

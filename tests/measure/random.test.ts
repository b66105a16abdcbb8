import { describe, expect, test } from 'vitest';
import { drawError, type Random, seededRandom, seedFromText } from '../../src/measure/random.ts';
import { expectToMeet } from '../references/check-value.ts';
import { FNV_1A } from '../references/seed.ts';
import { T_975 } from '../references/student-t.ts';

const TRIALS = 40_000;
const trials = (from: () => number) => Array.from({ length: TRIALS }, from);
const meanOf = (values: readonly number[]) => values.reduce((sum, it) => sum + it, 0) / values.length;
const deviationOf = (values: readonly number[]) => {
  const mean = meanOf(values);
  return Math.sqrt(meanOf(values.map((it) => (it - mean) ** 2)));
};

describe('seeded numbers', () => {
  test('repeat with their seed, and differ with another', () => {
    const take = (random: Random) => [random.uniform(), random.normal(), random.studentT(5), random.normal()];
    expect(take(seededRandom(7))).toEqual(take(seededRandom(7)));
    expect(take(seededRandom(7))).not.toEqual(take(seededRandom(8)));
  });

  test('of one use do not shift those of another', () => {
    const one = seededRandom(7);
    const alone = [one.normal(), one.normal()];
    const left = seededRandom(7);
    const right = seededRandom(9);
    const mixed: number[] = [];
    for (let i = 0; i < 2; i++) {
      mixed.push(left.normal());
      right.normal();
    }
    expect(mixed).toEqual(alone);
  });

  // Four standard errors of 40,000 draws: 0.02 for a mean, 0.015 for a standard deviation.
  test('uniform: in [0, 1), mean 1/2, standard deviation 1/√12', () => {
    const random = seededRandom(1);
    const values = trials(random.uniform);
    expect(values.every((it) => it >= 0 && it < 1)).toBe(true);
    expect(Math.abs(meanOf(values) - 0.5)).toBeLessThan(0.006);
    expect(Math.abs(deviationOf(values) - 1 / Math.sqrt(12))).toBeLessThan(0.004);
  });

  test('normal: mean 0, standard deviation 1, 5 % beyond 1.96', () => {
    const random = seededRandom(2);
    const values = trials(random.normal);
    expect(Math.abs(meanOf(values))).toBeLessThan(0.02);
    expect(Math.abs(deviationOf(values) - 1)).toBeLessThan(0.015);
    const beyond = values.filter((it) => Math.abs(it) > 1.959964).length / TRIALS;
    expect(Math.abs(beyond - 0.05)).toBeLessThan(0.0044);
  });

  test.each([1, 2, 5, 30])('Student’s t with %d degrees of freedom: 5 % beyond its quantile', (degrees) => {
    const random = seededRandom(100 + degrees);
    const limit = T_975.find((row) => row.arguments === degrees)?.expected ?? Number.NaN;
    const beyond = trials(() => random.studentT(degrees)).filter((it) => Math.abs(it) > limit).length / TRIALS;
    expect(Math.abs(beyond - 0.05)).toBeLessThan(0.0044);
  });
});

describe('an error drawn from its budget line', () => {
  const infinite = Number.POSITIVE_INFINITY;

  test('rectangular: within ±√3 standard uncertainties, standard deviation 1', () => {
    const random = seededRandom(3);
    const values = trials(() => drawError(random, { distribution: 'rectangular', degreesOfFreedom: infinite }));
    expect(values.every((it) => Math.abs(it) <= Math.sqrt(3))).toBe(true);
    expect(Math.max(...values)).toBeGreaterThan(1.73);
    expect(Math.abs(deviationOf(values) - 1)).toBeLessThan(0.015);
  });

  test('normal: standard deviation 1', () => {
    const random = seededRandom(4);
    const values = trials(() => drawError(random, { distribution: 'normal', degreesOfFreedom: infinite }));
    expect(Math.abs(deviationOf(values) - 1)).toBeLessThan(0.015);
  });

  test('t: wider than normal, by √(ν / (ν − 2))', () => {
    const random = seededRandom(5);
    const values = trials(() => drawError(random, { distribution: 't', degreesOfFreedom: 10 }));
    expect(Math.abs(deviationOf(values) - Math.sqrt(10 / 8))).toBeLessThan(0.03);
  });
});

describe('a seed from text', () => {
  test.each(FNV_1A.map((row) => [row.label, row] as const))('%s', (_, row) => {
    expectToMeet(seedFromText(row.arguments) >>> 0, row);
  });

  test('is a whole number of 32 bits', () => {
    for (const text of ['', 'lantern-40', 'é', 'a\nb']) expect(seedFromText(text) | 0).toBe(seedFromText(text));
  });

  test('follows the text', () => {
    expect(seedFromText('lantern-40')).not.toBe(seedFromText('lantern-41'));
    expect(seedFromText('ab')).not.toBe(seedFromText('ba'));
  });
});

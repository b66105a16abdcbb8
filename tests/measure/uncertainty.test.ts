import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { BudgetComponent } from '../../src/measure/figure.ts';
import { NO_INSTRUMENT } from '../../src/measure/instrument/instrument.ts';
import { pooledRepeats } from '../../src/measure/irradiance/repeats.ts';
import { powerSampler } from '../../src/measure/money/ranking.ts';
import { seededRandom } from '../../src/measure/random.ts';
import { verbatim } from '../../src/measure/statement.ts';
import {
  combinedUncertainty,
  coverageFactor,
  effectiveDegreesOfFreedom,
  exactOver,
  linearFigure,
  makeFigure,
  productFigure,
  propagate,
  rectangular,
} from '../../src/measure/uncertainty.ts';
import { expectToMeet } from '../references/check-value.ts';
import {
  COMBINED,
  EFFECTIVE_DEGREES,
  EXPANDED,
  QUOTIENT_ABSOLUTE,
  QUOTIENT_RELATIVE,
  type Quotient,
  RECTANGULAR,
  TYPE_A,
} from '../references/uncertainty.ts';
import { figure, identity, line, RUNS, vague } from './make.ts';

const asPart = ({ contribution, degreesOfFreedom }: { contribution: number; degreesOfFreedom: number }) => ({
  contribution,
  source: { degreesOfFreedom },
});

const named = <Row extends { label: string }>(rows: readonly Row[]) => rows.map((row) => [row.label, row] as const);

const quotient = ({ numerator, numeratorRelative, denominator, denominatorRelative }: Quotient) =>
  productFigure(identity(), [
    { figure: figure(numerator, [line('numerator', numerator * numeratorRelative)]), power: 1 },
    { figure: figure(denominator, [line('denominator', denominator * denominatorRelative)]), power: -1 },
  ]);

describe('check values of the guide to uncertainty', () => {
  test.each(named(RECTANGULAR))('%s', (_, row) => expectToMeet(rectangular(row.arguments), row));
  test.each(named(TYPE_A))('%s', (_, row) => {
    const { readings, ofTheMean } = row.arguments;
    const s = pooledRepeats([readings])?.standardDeviation ?? Number.NaN;
    expectToMeet(ofTheMean ? s / Math.sqrt(readings.length) : s, row);
  });
  test.each(named(COMBINED))('%s', (_, row) => {
    expectToMeet(row.arguments.coverageFactor * combinedUncertainty(row.arguments.parts), row);
  });
  test.each(named(EFFECTIVE_DEGREES))('%s', (_, row) => {
    expectToMeet(effectiveDegreesOfFreedom(row.arguments.parts.map(asPart)), row);
  });
  test.each(named(EXPANDED))('%s', (_, row) => {
    const budget = row.arguments.parts.map((part, i) => line(`part ${i}`, part.contribution, part));
    const it = figure(100, budget);
    expectToMeet((it.interval95?.[1] ?? Number.NaN) - 100, row);
    expectToMeet(100 - (it.interval95?.[0] ?? Number.NaN), row);
  });
  test.each(named(QUOTIENT_RELATIVE))('%s, relative', (_, row) => {
    const it = quotient(row.arguments);
    expectToMeet((it.standardUncertainty ?? Number.NaN) / it.value, row);
  });
  test.each(named(QUOTIENT_ABSOLUTE))('%s, absolute', (_, row) => {
    const it = quotient(row.arguments);
    expect(it.value).toBeCloseTo(row.arguments.numerator / row.arguments.denominator, 12);
    expectToMeet(it.standardUncertainty ?? Number.NaN, row);
  });
});

describe('effective degrees of freedom', () => {
  test('are infinite without a type A part, and without any part', () => {
    expect(effectiveDegreesOfFreedom([line('b', 1)])).toBe(Number.POSITIVE_INFINITY);
    expect(effectiveDegreesOfFreedom([])).toBe(Number.POSITIVE_INFINITY);
    expect(effectiveDegreesOfFreedom([line('b', 0, { degreesOfFreedom: 3 })])).toBe(Number.POSITIVE_INFINITY);
  });

  test('are those of a single part', () => {
    expect(effectiveDegreesOfFreedom([asPart({ contribution: 0.3, degreesOfFreedom: 7 })])).toBe(7);
  });

  test('are whole, at least the fewest of a part, and no more than all together', () => {
    const part = fc.record({
      contribution: fc.double({ min: 0.01, max: 100, noNaN: true }),
      degreesOfFreedom: fc.integer({ min: 1, max: 60 }),
    });
    fc.assert(
      fc.property(fc.array(part, { minLength: 1, maxLength: 6 }), (parts) => {
        const effective = effectiveDegreesOfFreedom(parts.map(asPart));
        expect(Number.isInteger(effective)).toBe(true);
        expect(effective).toBeGreaterThanOrEqual(Math.min(...parts.map((it) => it.degreesOfFreedom)));
        expect(effective).toBeLessThanOrEqual(parts.reduce((sum, it) => sum + it.degreesOfFreedom, 0));
      }),
      RUNS,
    );
  });

  test('do not change with the unit', () => {
    const parts = [
      { contribution: 2, degreesOfFreedom: 8 },
      { contribution: 1, degreesOfFreedom: 3 },
    ];
    const scaled = parts.map((it) => ({ ...it, contribution: it.contribution * 1e-60 }));
    expect(effectiveDegreesOfFreedom(scaled.map(asPart))).toBe(effectiveDegreesOfFreedom(parts.map(asPart)));
  });
});

describe('making a figure', () => {
  const contribution = fc.double({ min: -50, max: 50, noNaN: true });
  const degreesOfFreedom = fc.oneof(fc.integer({ min: 1, max: 40 }), fc.constant(Number.POSITIVE_INFINITY));
  const budget: fc.Arbitrary<BudgetComponent[]> = fc
    .array(fc.record({ contribution, degreesOfFreedom }), { maxLength: 6 })
    .map((parts) => parts.map((part, i) => line(`line ${i}`, part.contribution, part)));

  test('an empty budget means exact', () => {
    expect(figure(599)).toMatchObject({ standardUncertainty: 0, interval95: [599, 599] });
  });

  test('an unknown uncertainty has its reason in place of numbers', () => {
    expect(vague(84, NO_INSTRUMENT)).toMatchObject({
      value: 84,
      standardUncertainty: null,
      interval95: null,
      coverageFactor: null,
      degreesOfFreedom: null,
      uncertaintyAbsent: NO_INSTRUMENT,
      budget: [],
    });
  });

  test('the interval contains the value', () => {
    fc.assert(
      fc.property(fc.double({ min: -200, max: 200, noNaN: true }), budget, (value, lines) => {
        const [low, high] = figure(value, lines).interval95 ?? [Number.NaN, Number.NaN];
        expect(low).toBeLessThanOrEqual(value);
        expect(high).toBeGreaterThanOrEqual(value);
      }),
      RUNS,
    );
  });

  test('a small scatter beside a large other error leaves the coverage factor at 1.96', () => {
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 40 }), fc.integer({ min: 1, max: 40 }), (digits, degrees) => {
        const it = figure(50, [
          line('calibration', 1.25),
          line('repeats', 10 ** (-digits / 2), { type: 'A', degreesOfFreedom: degrees, distribution: 't' }),
        ]);
        expect(it.coverageFactor).toBeCloseTo(1.96, 3);
      }),
      RUNS,
    );
  });

  test('the interval stops at the physical end of the scale, 0 unless told otherwise', () => {
    expect(figure(1, [line('a', 10)]).interval95?.[0]).toBe(0);
    expect(figure(30, [line('a', 10)]).interval95?.[0]).toBeCloseTo(30 - 19.6, 2);
    const open = makeFigure({ ...identity(), lowest: Number.NEGATIVE_INFINITY }, 1, { budget: [line('a', 10)] });
    expect(open.interval95?.[0]).toBeCloseTo(1 - 19.6, 2);
  });

  test('the cut of the interval does not show in the figure itself', () => {
    expect(Object.keys(makeFigure({ ...identity(), lowest: -5 }, 1, { budget: [] }))).not.toContain('lowest');
  });

  test('a coverage factor shrinks with the degrees of freedom', () => {
    expect(coverageFactor(4)).toBeGreaterThan(coverageFactor(5));
    expect(coverageFactor(5)).toBeGreaterThan(coverageFactor(Number.POSITIVE_INFINITY));
  });
});

describe('propagation', () => {
  test('independent errors add as squares', () => {
    const it = linearFigure(identity(), [
      { figure: figure(10, [line('a', 3)]), sensitivity: 1 },
      { figure: figure(20, [line('b', 4)]), sensitivity: -1 },
    ]);
    expect(it.value).toBe(-10);
    expect(it.standardUncertainty).toBeCloseTo(5, 12);
  });

  test('one error met twice adds with its sign before anything is squared', () => {
    const left = figure(10, [line('meter', 3)]);
    const right = figure(20, [line('meter', 4)]);
    const of = (sensitivity: number) =>
      linearFigure(identity(), [
        { figure: left, sensitivity: 1 },
        { figure: right, sensitivity },
      ]);
    expect(of(1).standardUncertainty).toBeCloseTo(7, 12);
    expect(of(-1).standardUncertainty).toBeCloseTo(1, 12);
    expect(of(1).budget).toHaveLength(1);
  });

  test('a figure less itself is exactly nothing', () => {
    const it = figure(10, [line('a', 3), line('b', 1, { degreesOfFreedom: 4 })]);
    const none = linearFigure(identity(), [
      { figure: it, sensitivity: 1 },
      { figure: it, sensitivity: -1 },
    ]);
    expect(none).toMatchObject({ value: 0, standardUncertainty: 0 });
  });

  test('the inputs are named and notes handed on once', () => {
    const a = makeFigure({ ...identity('a'), notes: [verbatim('struck out')] }, 1, { budget: [] });
    const b = makeFigure({ ...identity('b'), notes: [verbatim('struck out')] }, 1, { budget: [] });
    const it = propagate({ ...identity(), notes: [verbatim('scaled')] }, 2, [
      { figure: a, sensitivity: 1 },
      { figure: b, sensitivity: 1 },
    ]);
    expect(it.inputs).toEqual(['test/a', 'test/b']);
    expect(it.notes).toEqual([verbatim('scaled'), verbatim('struck out')]);
  });

  test('what is unassessed in an input is unassessed in the result, once', () => {
    const unassessed = [{ what: verbatim('Repeatability'), reason: verbatim('no repeats') }];
    const a = makeFigure(identity('a'), 1, { budget: [], unassessed });
    const b = makeFigure(identity('b'), 1, { budget: [], unassessed: [...unassessed] });
    const it = propagate(identity(), 2, [
      { figure: a, sensitivity: 1 },
      { figure: b, sensitivity: 1 },
    ]);
    expect(it.unassessed).toEqual(unassessed);
  });

  test('an input without a known uncertainty makes the result’s unknown, with its reason', () => {
    const it = propagate(identity(), 2, [
      { figure: figure(1, [line('a', 1)]), sensitivity: 1 },
      { figure: vague(1, NO_INSTRUMENT), sensitivity: 1 },
    ]);
    expect(it).toMatchObject({ value: 2, standardUncertainty: null, uncertaintyAbsent: NO_INSTRUMENT });
  });

  test('inputs are left as they were', () => {
    const a = figure(10, [line('meter', 3)]);
    const before = structuredClone(a);
    linearFigure(identity(), [
      { figure: a, sensitivity: 2 },
      { figure: a, sensitivity: 5 },
    ]);
    expect(a).toEqual(before);
  });
});

describe('bounds', () => {
  const bounded = (value: number, bound: 'below' | 'above') =>
    makeFigure({ ...identity(), bound }, value, { absent: verbatim('the reading is a bound') });

  test.each([
    ['below', 1, 'below'],
    ['above', 1, 'above'],
    ['below', -1, 'above'],
    ['above', -1, 'below'],
  ] as const)('%s times a sensitivity of %d is %s', (bound, sensitivity, expected) => {
    const it = linearFigure(identity(), [
      { figure: figure(10), sensitivity: 1 },
      { figure: bounded(2, bound), sensitivity },
    ]);
    expect(it.bound).toBe(expected);
    expect(it.standardUncertainty).toBeNull();
  });

  test('a divisor below something leaves a quotient above something', () => {
    const it = productFigure(identity(), [
      { figure: figure(10), power: 1 },
      { figure: bounded(2, 'below'), power: -1 },
    ]);
    expect(it).toMatchObject({ value: 5, bound: 'above' });
  });

  test('two that push the same way stay a bound; two that push apart are none', () => {
    const difference = (right: 'below' | 'above') =>
      linearFigure(identity(), [
        { figure: bounded(3, 'below'), sensitivity: 1 },
        { figure: bounded(2, right), sensitivity: -1 },
      ]);
    expect(difference('above').bound).toBe('below');
    expect(difference('below').bound).toBeUndefined();
  });

  test('one that has no effect is no bound of the result', () => {
    const it = propagate(identity(), 1, [{ figure: bounded(3, 'below'), sensitivity: 0 }]);
    expect(it.bound).toBeUndefined();
  });
});

describe('products of powers', () => {
  const positive = fc.double({ min: 0.1, max: 1000, noNaN: true });
  const share = fc.double({ min: 0, max: 0.2, noNaN: true });

  test('follow the relative rule', () => {
    fc.assert(
      fc.property(positive, positive, share, share, fc.integer({ min: -3, max: 3 }), (x, y, ux, uy, power) => {
        const it = productFigure(
          identity(),
          [
            { figure: figure(x, [line('x', ux * x)]), power },
            { figure: figure(y, [line('y', uy * y)]), power: 1 },
          ],
          7,
        );
        const value = 7 * x ** power * y;
        expect(it.value / value).toBeCloseTo(1, 10);
        expect((it.standardUncertainty ?? Number.NaN) / value).toBeCloseTo(Math.hypot(power * ux, uy), 10);
      }),
      RUNS,
    );
  });

  test('agree with a numerical derivative', () => {
    const at = (x: number, y: number) => 1000 * x ** 2 * y ** -1;
    const [x, y, ux, uy] = [12, 7, 0.5, 0.2];
    const h = 1e-5;
    const byX = (at(x + h, y) - at(x - h, y)) / (2 * h);
    const byY = (at(x, y + h) - at(x, y - h)) / (2 * h);
    const it = productFigure(
      identity(),
      [
        { figure: figure(x, [line('x', ux)]), power: 2 },
        { figure: figure(y, [line('y', uy)]), power: -1 },
      ],
      1000,
    );
    expect(it.standardUncertainty).toBeCloseTo(Math.hypot(byX * ux, byY * uy), 3);
    expect(it.budget.map((entry) => Math.sign(entry.contribution))).toEqual([1, -1]);
  });

  test('with a factor of zero stay finite', () => {
    const it = productFigure(identity(), [
      { figure: figure(0, [line('x', 0.5)]), power: 1 },
      { figure: figure(4, [line('y', 1)]), power: 1 },
    ]);
    expect(it.value).toBe(0);
    expect(it.standardUncertainty).toBeCloseTo(2, 12);
  });
});

describe('an exact number over a figure', () => {
  const ends = (exact: number, value: number, u: number) =>
    exactOver(identity(), exact, figure(value, [line('x', u)])).interval95 ?? [Number.NaN, Number.NaN];

  test('has the ends of its interval turned round, and a standard uncertainty of first order', () => {
    const it = exactOver(identity(), figure(300), figure(10, [line('x', 2)]));
    const half = 1.959964 * 2;
    expect(it.interval95?.[0]).toBeCloseTo(300 / (10 + half), 4);
    expect(it.interval95?.[1]).toBeCloseTo(300 / (10 - half), 4);
    expect(it.standardUncertainty).toBeCloseTo(6, 12);
    expect(it.budget).toMatchObject([{ contribution: -6 }]);
    expect((it.coverageFactor ?? Number.NaN) * 2 * 6).toBeCloseTo(300 / (10 - half) - 300 / (10 + half), 4);
    expect(it.inputs).toHaveLength(2);
    expect(exactOver(identity(), 300, figure(10, [line('x', 2)])).interval95).toEqual(it.interval95);
  });

  test('agrees with drawing the figure, where first order does not', () => {
    const [low, high] = ends(300, 10, 3);
    const draw = powerSampler([figure(10, [line('x', 3)])], seededRandom(7));
    const drawn = Float64Array.from({ length: 40_000 }, () => 300 / (draw()[0] as number)).sort();
    // 2.5 % of 40,000 scatter by 3 %, so the share beyond an end by less than a fifth of it.
    const under = drawn.filter((it) => it > 0 && it < low).length / drawn.length;
    const over = drawn.filter((it) => it > high || it < 0).length / drawn.length;
    for (const share of [under, over]) expect(Math.abs(share - 0.025)).toBeLessThan(0.005);
    const firstOrder = 30 + 1.959964 * 9;
    expect(drawn.filter((it) => it > firstOrder || it < 0).length / drawn.length).toBeGreaterThan(0.1);
  });

  test('has no interval where the figure may be nought, and says why', () => {
    const it = exactOver(identity(), 300, figure(10, [line('x', 5.2)]));
    expect(it).toMatchObject({
      value: 30,
      interval95: null,
      budget: [],
      uncertaintyAbsent: { code: 'divisor-reaches-nought' },
    });
  });

  test('stays exact, unknown or a bound where the figure is', () => {
    expect(exactOver(identity(), 300, figure(10)).interval95).toEqual([30, 30]);
    expect(exactOver(identity(), 300, vague(10)).uncertaintyAbsent).toEqual(NO_INSTRUMENT);
    expect(exactOver(identity(), 300, { ...vague(10), bound: 'below' }).bound).toBe('above');
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { flickerResults } from '../../../src/measure/exposure/flicker-results.ts';
import type { FigureOrGap } from '../../../src/measure/figure.ts';
import { verbatim } from '../../../src/measure/statement.ts';
import { depthOf, frequencyOf, NO_FLICKER, resultOf } from '../../support/exposure-readings.ts';
import { figure, figureOf, line, RUNS, vague } from '../make.ts';

const results = (depth: FigureOrGap, frequency: FigureOrGap) =>
  flickerResults('p/d', (mode) => (mode === 'red' ? NO_FLICKER : { depth, frequency }));
const result = (id: string, depth: FigureOrGap, frequency: FigureOrGap) => resultOf(results(depth, frequency), id);
const lowRisk = (depth: FigureOrGap, frequency: FigureOrGap) =>
  result('flicker-low-risk-multiple-combined', depth, frequency);
const noEffect = (depth: FigureOrGap, frequency: FigureOrGap) =>
  result('flicker-no-effect-multiple-combined', depth, frequency);

describe('flicker as a multiple of a line', () => {
  test('has two results a mode, in order', () => {
    expect(results(depthOf(8), frequencyOf(120)).map((it) => it.id)).toEqual(
      ['combined', 'red', 'near-infrared'].flatMap((mode) => [
        `flicker-low-risk-multiple-${mode}`,
        `flicker-no-effect-multiple-${mode}`,
      ]),
    );
  });

  test('8 % at 120 Hz: 0.833 times the low-risk line, twice the line of no effect', () => {
    const it = figureOf(lowRisk(depthOf(8, 0.4), frequencyOf(120)).figure);
    expect(it).toMatchObject({ unit: '1', method: { id: 'flicker-lines', version: 1 }, basis: 'derived' });
    expect(it.value).toBeCloseTo(8 / 9.6, 12);
    expect(it.calculation).toBe('k = 8 % ÷ (0.08 % × 120) = 0.8333');
    expect(figureOf(noEffect(depthOf(8, 0.4), frequencyOf(120)).figure).value).toBeCloseTo(8 / 3.996, 12);
  });

  test('keeps the uncertainty of the depth, and says that that of the frequency is missing', () => {
    const it = figureOf(lowRisk(depthOf(8, 0.4), frequencyOf(120)).figure);
    expect(it.standardUncertainty).toBeCloseTo(0.4 / 9.6, 12);
    expect(it.budget.map((entry) => entry.source.key)).toEqual(['flicker-meter']);
    expect(it.unassessed).toEqual([
      { what: { code: 'flicker-frequency' }, reason: verbatim('the meter’s file states none for the frequency') },
    ]);
    expect(it.inputs).toEqual(['test/flicker-combined', 'test/flicker-frequency-combined']);
  });

  test('takes the uncertainty of the frequency where it is known', () => {
    const known = figure(120, [line('clock', 1.2)], 'flicker-frequency-combined', 'Hz');
    const it = figureOf(lowRisk(depthOf(8), known).figure);
    expect(it.value).toBeCloseTo(8 / 9.6, 12);
    expect(it.standardUncertainty).toBeCloseTo((0.01 * 8) / 9.6, 12);
    expect(it.unassessed).toEqual([]);
  });

  test('of a bound stays a bound', () => {
    const depth = { ...vague(1, 'the reading is a bound'), unit: '%' as const, bound: 'below' as const };
    const it = lowRisk(depth, frequencyOf(100));
    expect(figureOf(it.figure)).toMatchObject({ bound: 'below', value: 0.125 });
    expect(figureOf(it.figure).calculation).toMatch(/^k < 1 %/);
  });

  test('of no modulation is nought', () => {
    expect(figureOf(lowRisk(depthOf(0), frequencyOf(100)).figure).value).toBe(0);
  });

  test('close above 90 Hz notes what it would be below', () => {
    const notes = (depth: FigureOrGap, hertz: number) => figureOf(lowRisk(depth, frequencyOf(hertz)).figure).notes;
    // 0.025 · 90 = 2.25 %.
    expect(notes(depthOf(9), 91)).toEqual([{ code: 'flicker-near-step', hertz: 91, multiple: expect.closeTo(4, 6) }]);
    const bounded = { ...vague(9, 'a bound'), unit: '%' as const, bound: 'below' as const };
    expect(notes(bounded, 91)).toEqual([
      { code: 'flicker-near-step', hertz: 91, multiple: expect.closeTo(4, 6), bound: 'below' },
    ]);
    expect(notes(depthOf(9), 90)).toHaveLength(1);
    expect(notes(depthOf(9), 95)).toEqual([]);
    expect(notes(depthOf(9), 89.9)).toEqual([]);
  });

  test('rises with the depth', () => {
    const depth = fc.double({ min: 0, max: 100, noNaN: true });
    fc.assert(
      fc.property(depth, depth, fc.double({ min: 1, max: 1250, noNaN: true }), (a, b, f) => {
        const multiple = (it: number) => figureOf(lowRisk(depthOf(it), frequencyOf(f)).figure).value;
        expect(multiple(Math.max(a, b))).toBeGreaterThanOrEqual(multiple(Math.min(a, b)));
      }),
      RUNS,
    );
  });
});

describe('no multiple', () => {
  const reasonOf = (it: { figure: FigureOrGap }) => ('gap' in it.figure ? it.figure.reason : 'a figure');

  test('for near-infrared alone, whatever was read', () => {
    const it = result('flicker-low-risk-multiple-near-infrared', depthOf(8), frequencyOf(120));
    expect(reasonOf(it)).toEqual({ code: 'flicker-lines-visible-only' });
  });

  test('where the line ends', () => {
    expect(reasonOf(lowRisk(depthOf(8), frequencyOf(1250.1)))).toEqual({ code: 'flicker-no-line-above', hertz: 1250 });
    expect(reasonOf(noEffect(depthOf(8), frequencyOf(1250.1)))).toBe('a figure');
    expect(reasonOf(noEffect(depthOf(8), frequencyOf(3000.1)))).toEqual({ code: 'flicker-no-line-above', hertz: 3000 });
  });

  test('without a depth or a frequency', () => {
    const { depth, frequency } = NO_FLICKER;
    const unknown = (because: object) => ({ code: 'flicker-multiple-unknown', because });
    expect(reasonOf(lowRisk(depth, frequencyOf(100)))).toEqual({ code: 'flicker-not-measured' });
    expect(reasonOf(lowRisk(depthOf(8), frequency))).toEqual(unknown({ code: 'flicker-frequency-not-recorded' }));
    expect(reasonOf(lowRisk(depthOf(8), { ...frequencyOf(100), bound: 'above' }))).toEqual(
      unknown({ code: 'flicker-frequency-a-bound' }),
    );
    expect(reasonOf(lowRisk(depthOf(8), frequencyOf(0)))).toEqual(unknown({ code: 'flicker-without-frequency' }));
  });
});

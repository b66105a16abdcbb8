import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type FlickerReading, flickerResults } from '../../../src/measure/exposure/flicker-results.ts';
import { sentenceOf } from '../../../src/measure/exposure/limit.ts';
import { type FigureOrGap, gap } from '../../../src/measure/figure.ts';
import { figure, figureOf, line, RUNS, vague } from '../make.ts';

const depthOf = (value: number, u = 0) =>
  figure(value, u > 0 ? [line('flicker-meter', u)] : [], 'flicker-combined', '%');
/** As the ledger has it: the meter's file states no uncertainty of the frequency. */
const frequencyOf = (value: number) => ({
  ...vague(value, 'the meter’s file states none for the frequency', 'flicker-frequency-combined'),
  unit: 'Hz' as const,
});
const NONE: FlickerReading = {
  depth: gap('flicker-combined', 'flicker was not measured'),
  frequency: gap('flicker-frequency-combined', 'no frequency is recorded'),
};

const results = (depth: FigureOrGap, frequency: FigureOrGap) =>
  flickerResults('p/d', (mode) => (mode === 'red' ? NONE : { depth, frequency }));
const result = (id: string, depth: FigureOrGap, frequency: FigureOrGap) => {
  const it = results(depth, frequency).find((entry) => entry.id === id);
  if (!it) throw new Error(`no result ${id}`);
  return it;
};
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
      { what: 'Frequency of the flicker', reason: 'the meter’s file states none for the frequency' },
    ]);
    expect(it.inputs).toEqual(['test/flicker-combined', 'test/flicker-frequency-combined']);
    expect(sentenceOf(lowRisk(depthOf(8, 0.4), frequencyOf(120)))).toContain(
      'How sure the frequency is, is not known.',
    );
  });

  test('takes the uncertainty of the frequency where it is known', () => {
    const known = figure(120, [line('clock', 1.2)], 'flicker-frequency-combined', 'Hz');
    const it = figureOf(lowRisk(depthOf(8), known).figure);
    expect(it.value).toBeCloseTo(8 / 9.6, 12);
    expect(it.standardUncertainty).toBeCloseTo((0.01 * 8) / 9.6, 12);
    expect(it.unassessed).toEqual([]);
    expect(sentenceOf(lowRisk(depthOf(8), known))).not.toContain('How sure the frequency');
  });

  test('of a bound stays a bound', () => {
    const depth = { ...vague(1, 'the reading is a bound'), unit: '%' as const, bound: 'below' as const };
    const it = lowRisk(depth, frequencyOf(100));
    expect(figureOf(it.figure)).toMatchObject({ bound: 'below', value: 0.125 });
    expect(figureOf(it.figure).calculation).toMatch(/^k < 1 %/);
    expect(sentenceOf(it)).toContain('by below 1 % at 100 Hz: below 0.125 times the line');
  });

  test('of no modulation is nought', () => {
    expect(figureOf(lowRisk(depthOf(0), frequencyOf(100)).figure).value).toBe(0);
  });

  test('close above 90 Hz says what it would be below', () => {
    const near = lowRisk(depthOf(9), frequencyOf(91));
    expect(sentenceOf(near)).toContain(
      'Note: 91 Hz is close to 90 Hz, where the line steps; just below it the multiple would be 4.',
    );
    expect(sentenceOf(lowRisk(depthOf(9), frequencyOf(90)))).toContain('where the line steps');
    expect(sentenceOf(lowRisk(depthOf(9), frequencyOf(95)))).not.toContain('where the line steps');
    expect(sentenceOf(lowRisk(depthOf(9), frequencyOf(89.9)))).not.toContain('where the line steps');
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
    expect(reasonOf(it)).toBe('the lines speak of visible light');
    expect(sentenceOf(it)).toContain('speaks of visible light');
    expect(sentenceOf(it)).toContain('that does not say that its flicker does nothing');
  });

  test('where the line ends', () => {
    expect(reasonOf(lowRisk(depthOf(8), frequencyOf(1250.1)))).toBe(
      'no line applies, for the standard has none above 1250 Hz',
    );
    expect(reasonOf(noEffect(depthOf(8), frequencyOf(1250.1)))).toBe('a figure');
    expect(reasonOf(noEffect(depthOf(8), frequencyOf(3000.1)))).toBe(
      'no line applies, for the standard has none above 3000 Hz',
    );
  });

  test('without a depth or a frequency', () => {
    expect(reasonOf(lowRisk(gap('flicker-combined', 'flicker was not measured'), frequencyOf(100)))).toBe(
      'flicker was not measured',
    );
    expect(reasonOf(lowRisk(depthOf(8), gap('flicker-frequency-combined', 'no frequency is recorded')))).toBe(
      'not known, for no frequency is recorded',
    );
    expect(reasonOf(lowRisk(depthOf(8), { ...frequencyOf(100), bound: 'above' }))).toContain('beyond a bound');
    expect(reasonOf(lowRisk(depthOf(8), frequencyOf(0)))).toBe('not known, for without a frequency there is no line');
    expect(sentenceOf(lowRisk(depthOf(8), gap('flicker-frequency-combined', 'no frequency is recorded')))).toContain(
      'no frequency is recorded.',
    );
  });
});

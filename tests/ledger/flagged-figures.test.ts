import { describe, expect, test } from 'vitest';
import { flaggedFigures } from '../../src/ledger/flagged-figures.ts';
import { type Basis, type Figure, type FigureMap, type Flag, gap, isFigure } from '../../src/measure/figure.ts';
import type { MetricId } from '../../src/measure/metrics.ts';
import { verbatim } from '../../src/measure/statement.ts';
import { figure } from '../measure/make.ts';

const SESSION = 'lantern-40/2026-03-02';
const of = (metric: string, inputs: string[], basis: Basis = 'derived'): Figure => ({
  ...figure(1, [], metric),
  id: `${SESSION}/${metric}`,
  inputs: inputs.map((it) => `${SESSION}/${it}`),
  basis,
});

/** A small session: a grid, of which a mean, a power and a price are made, and a model of the same readings. */
const FIGURES: FigureMap = new Map(
  [
    of('mean-irradiance', ['grid']),
    of('mean-irradiance-by-cells', ['grid']),
    of('led-area', ['field']),
    of('optical-power', ['mean-irradiance', 'led-area']),
    of('price-per-watt', ['optical-power']),
    of('emitted-power', ['grid.rows'], 'modelled'),
    of('price-per-emitted-watt', ['emitted-power'], 'modelled'),
    of('mains-draw-combined', ['mains.combined'], 'measured'),
    of('efficiency-combined', ['optical-power', 'mains-draw-combined']),
    of('gridlock', ['gridlock'], 'measured'),
  ].map((it) => [it.metric, it] as const),
);

const flag = (concerns: string[], part: Partial<Flag> = {}): Flag => ({
  check: 'a-check',
  severity: 'doubt',
  finding: verbatim('Odd.'),
  concerns: concerns as MetricId[],
  ...part,
});

/** Which figures carry a flag, and from which figure. */
function marked(flags: readonly Flag[], figures = FIGURES): Record<string, Array<string | undefined>> {
  const all = [...flaggedFigures(figures, flags).values()].filter(isFigure).filter((it) => it.flags.length > 0);
  return Object.fromEntries(all.map((it) => [it.metric, it.flags.map((one) => one.from)]));
}

describe('a flag', () => {
  test('on a figure is on every figure made of it, and says from which', () => {
    expect(marked([flag(['optical-power'])])).toEqual({
      'optical-power': [undefined],
      'price-per-watt': ['optical-power'],
      'efficiency-combined': ['optical-power'],
    });
  });

  test('on a mean of readings is on whatever else is made of them, the model too', () => {
    const found = marked([flag(['mean-irradiance'])]);
    expect(found).toEqual({
      'mean-irradiance': [undefined],
      'mean-irradiance-by-cells': ['mean-irradiance'],
      'optical-power': ['mean-irradiance'],
      'price-per-watt': ['mean-irradiance'],
      'efficiency-combined': ['mean-irradiance'],
      'emitted-power': ['mean-irradiance'],
      'price-per-emitted-watt': ['mean-irradiance'],
    });
    // A path that only begins alike is another reading.
    expect(found.gridlock).toBeUndefined();
  });

  test('on a modelled figure is none on the readings behind it', () => {
    expect(marked([flag(['emitted-power'])])).toEqual({
      'emitted-power': [undefined],
      'price-per-emitted-watt': ['emitted-power'],
    });
  });

  test('that is only a note stays where it is', () => {
    expect(marked([flag(['optical-power'], { severity: 'note' })])).toEqual({ 'optical-power': [undefined] });
  });

  test('whose reach is told in full is not handed on', () => {
    expect(marked([flag(['optical-power', 'price-per-watt'], { isNotHandedOn: true })])).toEqual({
      'optical-power': [undefined],
      'price-per-watt': [undefined],
    });
  });

  test('that reaches a figure two ways stands there once', () => {
    expect(marked([flag(['mean-irradiance', 'led-area'])])['price-per-watt']).toHaveLength(1);
    const two = [flag(['mean-irradiance']), flag(['led-area'], { check: 'another' })];
    expect(marked(two)['price-per-watt']).toEqual(['mean-irradiance', 'led-area']);
  });

  test('that concerns a figure itself is not said to come from elsewhere', () => {
    expect(marked([flag(['optical-power', 'price-per-watt'])])['price-per-watt']).toEqual([undefined]);
  });

  test('on a gap is on nothing, and changes no value', () => {
    const figures = new Map(FIGURES).set('led-area', gap('led-area', verbatim('not measured')));
    expect(marked([flag(['led-area'])], figures)).toEqual({});
    for (const [metric, it] of flaggedFigures(FIGURES, [flag(['mean-irradiance'])])) {
      const { flags: _, ...rest } = it as Figure;
      const { flags: __, ...before } = FIGURES.get(metric) as Figure;
      expect(rest).toEqual(before);
    }
  });
});

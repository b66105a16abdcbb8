import { describe, expect, test } from 'vitest';
import type { Figure } from '../../src/measure/figure.ts';
import { efficiencyFigure, netEfficiencyFigure } from '../../src/measure/irradiance/efficiency.ts';
import { gridFigures } from '../../src/measure/irradiance/grid.ts';
import { gridGeometry } from '../../src/measure/irradiance/grid-geometry.ts';
import {
  ledAreaFigure,
  opticalPowerFigure,
  peakToMeanFigure,
  sideFigure,
} from '../../src/measure/irradiance/optical-power.ts';
import {
  exposureEachMinuteFigure,
  timeEachJouleFigure,
} from '../../src/measure/irradiance/radiant-exposure-figures.ts';
import { methodReference } from '../../src/measure/method-versions.ts';
import { methodById } from '../../src/measure/methods.ts';
import { METRICS, metricById } from '../../src/measure/metrics.ts';
import { priceFigure, pricePerWattFigure } from '../../src/measure/money/price.ts';
import { runningCostFigure } from '../../src/measure/money/running-cost.ts';
import { HOT_MIDDLE } from '../references/grid.ts';
import { figure, figureOf, gridOf } from './make.ts';

describe('the list of metrics', () => {
  test('has each id once, fit for an anchor', () => {
    const ids = METRICS.map((metric) => metric.id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids) expect(id).toMatch(/^[a-z]+(-[a-z]+|-at-\d+-cm)*$/);
  });

  test('has each name once', () => {
    const names = METRICS.map((metric) => metric.name);
    expect(new Set(names).size).toBe(names.length);
  });

  test.each(METRICS.map((metric) => [metric.id, metric] as const))('%s has a registered method', (_, metric) => {
    expect(methodById(metric.method).id).toBe(metric.method);
  });

  test('finds a metric by its id, and refuses an unknown one by name', () => {
    expect(metricById('optical-power').unit).toBe('W');
    expect(() => metricById('brightness')).toThrow('no metric is registered as "brightness"');
  });
});

describe('what is calculated agrees with the list', () => {
  const grid = gridFigures(gridOf(HOT_MIDDLE), gridGeometry(3, 3, 24, 48, 2.54) ?? { code: 'field-not-measured' });
  const side = (of: 'width' | 'height') =>
    sideFigure({ panel: 'p', side: of, value: 30, edgeSetting: 0.3, instrument: undefined });
  const watts = figure(100);
  const price = priceFigure({
    panel: 'p',
    amount: 599,
    currency: 'EUR',
    rate: 1,
    baseCurrency: 'EUR',
    date: '2026-02-20',
    kind: 'paid',
  });
  const inputs = { session: 's', mode: 'red', power: figure(20), draw: watts };

  const figures: Figure[] = [
    ...Object.values(grid).map((it) => figureOf(it)),
    side('width'),
    side('height'),
    ledAreaFigure('p', side('width'), side('height')),
    opticalPowerFigure('s', figureOf(grid.mean), watts),
    peakToMeanFigure('s', figureOf(grid.mean), figureOf(grid.mean)),
    efficiencyFigure(inputs),
    netEfficiencyFigure(inputs, figure(1)) ?? watts,
    price,
    pricePerWattFigure('s', price, watts, 'EUR'),
    exposureEachMinuteFigure('s', figureOf(grid.mean)),
    timeEachJouleFigure('s', figureOf(grid.mean)),
    runningCostFigure('s', watts, 0.3, 'EUR'),
  ];

  test.each(figures.map((it) => [it.metric, it] as const))('%s: unit and method', (id, it) => {
    const metric = metricById(id);
    expect(it.unit).toBe(metric.unit);
    expect(it.method).toBe(methodReference(metric.method));
  });
});

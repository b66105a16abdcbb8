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
import { isMethodId, methodReference } from '../../src/measure/method-versions.ts';
import {
  identityOf,
  isMetricId,
  METRICS,
  metricById,
  metricsOnPanelPage,
  rangeFilters,
  rankingColumns,
} from '../../src/measure/metrics.ts';
import { priceFigure, pricePerWattFigure } from '../../src/measure/money/price.ts';
import { runningCostFigure } from '../../src/measure/money/running-cost.ts';
import { HOT_MIDDLE } from '../references/grid.ts';
import { figure, figureOf, gridOf } from './make.ts';

const twice = (all: readonly string[]) => all.filter((it, i) => all.indexOf(it) !== i);

/** What is wrong with rows of the catalogue, in words; nothing where they are sound. */
function faults(metrics: typeof METRICS): string[] {
  return [
    ...twice(metrics.map((it) => it.id)).map((id) => `${id}: an id that is there twice`),
    ...twice(metrics.map((it) => it.name)).map((name) => `${name}: a name that is there twice`),
    ...twice(metrics.flatMap((it) => it.ranking?.key ?? [])).map((key) => `${key}: a column that is there twice`),
    ...twice(metrics.flatMap((it) => it.filter?.key ?? [])).map((key) => `${key}: a filter that is there twice`),
    ...metrics.flatMap(({ id, name, method, ranking, filter }) => [
      ...(/^[a-z]+(-[a-z]+|-at-\d+-cm)*$/.test(id) ? [] : [`${id}: not fit for an anchor`]),
      ...(name.trim() === '' ? [`${id}: no name`] : []),
      ...(isMethodId(method) ? [] : [`${id}: no method "${method}"`]),
      // Columns and filters are named in addresses, parted by dots and hyphens.
      ...[ranking?.key, filter?.key].flatMap((key) =>
        key === undefined || /^[a-z]+(-[a-z]+)*$/.test(key) ? [] : [`${id}: "${key}" is not fit for an address`],
      ),
    ]),
  ];
}

/** Two of a list that claim one place have no order. */
const clashes = (all: ReadonlyArray<{ place: number; of: string }>) =>
  all.filter((it, i) => all.findIndex((other) => other.place === it.place) !== i).map((it) => it.of);

describe('the catalogue of metrics', () => {
  test('has no faults', () => {
    expect(faults(METRICS)).toEqual([]);
  });

  test('would tell of one', () => {
    const [first, second] = METRICS;
    if (!first || !second) throw new Error('an empty catalogue');
    const column = { key: 'a.b', label: 'A', first: 'ascending', place: {} } as const;
    expect(faults([first, { ...second, id: first.id, name: '', ranking: column }])).toEqual([
      `${first.id}: an id that is there twice`,
      `${first.id}: no name`,
      `${first.id}: "a.b" is not fit for an address`,
    ]);
  });

  test('gives each column, filter and figure of a list a place of its own', () => {
    for (const basis of ['optical', 'emitted'] as const) {
      expect(clashes(rankingColumns(basis).map(({ place, metric }) => ({ place, of: metric.id })))).toEqual([]);
    }
    expect(clashes(rangeFilters().map(({ filter }) => ({ place: filter.place, of: filter.key })))).toEqual([]);
    for (const list of ['key', 'spread', 'times'] as const) {
      const placed = METRICS.flatMap(({ id, panelPage }) => {
        const place = panelPage?.[list];
        return place === undefined ? [] : [{ place, of: id }];
      });
      expect(clashes(placed), list).toEqual([]);
      expect(metricsOnPanelPage(list)).toHaveLength(placed.length);
    }
  });

  test('finds a metric by its id, and refuses an unknown one by name', () => {
    expect(metricById('optical-power').unit).toBe('W');
    expect(isMetricId('optical-power')).toBe(true);
    expect(isMetricId('brightness')).toBe(false);
    expect(isMetricId('toString')).toBe(false);
    expect(() => metricById('brightness')).toThrow('no metric is registered as "brightness"');
  });
});

test('a figure takes its unit and its method from its row', () => {
  expect(identityOf('efficiency-red', 'lantern-40/2026-03-02')).toEqual({
    id: 'lantern-40/2026-03-02/efficiency-red',
    metric: 'efficiency-red',
    unit: '%',
    method: methodReference('efficiency'),
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
  const inputs = { session: 's', mode: 'red' as const, power: figure(20), draw: watts };

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

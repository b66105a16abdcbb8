/** The planner's numbers beside those that the build has worked out. */
import { beforeAll, describe, expect, test } from 'vitest';
import { ranged, reckonPlan } from '../../src/client/plan-reckoning.ts';
import { isFigure } from '../../src/measure/figure.ts';
import { type PlanData, planJson } from '../../src/present/plan-data.ts';
import { type Demo, demoLedger } from '../support/demo-ledger.ts';

let demo: Demo;
let data: PlanData;
beforeAll(() => {
  demo = demoLedger('ruddlestone-r150');
  data = JSON.parse(planJson(demo.ledger));
});
const panelOf = (slug: string) => {
  const it = data.panels.find((one) => one.slug === slug);
  if (!it) throw new Error(slug);
  return it;
};
const figureOf = (slug: string, metric: string) => {
  const it = demo.panel(slug).figures.get(metric);
  if (!isFigure(it) || !it.interval95) throw new Error(`${slug}: no ${metric}`);
  return { value: it.value, low: it.interval95[0], high: it.interval95[1] };
};
const modelled = () => data.panels.filter((it) => it.model);

describe('at the distances of the table', () => {
  test.each([5, 10, 15, 30, 45, 60])('%d cm: mean and peak are the table’s, interval and all', (cm) => {
    for (const panel of modelled()) {
      const found = reckonPlan(panel, { cm, height: 170, unit: 'cm' }, data);
      for (const [name, it] of [
        ['mean', found?.mean],
        ['peak', found?.peak],
      ] as const) {
        if (!isFigure(demo.panel(panel.slug).figures.get(`${name}-irradiance-at-${cm}-cm`))) {
          // Near by, single LEDs may show, and nobody knows where they are: neither says anything.
          expect([name, it], panel.slug).toEqual(['peak', undefined]);
          continue;
        }
        const wanted = figureOf(panel.slug, `${name}-irradiance-at-${cm}-cm`);
        for (const end of ['value', 'low', 'high'] as const) {
          expect((it?.[end] ?? 0) / wanted[end], `${panel.slug} ${name} ${end}`).toBeCloseTo(1, 3);
        }
      }
    }
  });

  test('nearer by, the share’s interval grows with that of the peak, not staying that of 15 cm', () => {
    const share = (cm: number) => reckonPlan(panelOf('quennick-sprat'), { cm, height: 170, unit: 'cm' }, data)?.eye;
    const width = (cm: number) => (share(cm)?.cautious ?? 0) / (share(cm)?.share.value ?? 1);
    expect(width(5)).toBeGreaterThan(1.05 * width(15));
    expect(width(10)).toBeGreaterThan(width(15));
  });

  test.each([15, 30, 60])('%d cm: the share of the infrared limit is the build’s', (cm) => {
    for (const panel of modelled()) {
      const found = reckonPlan(panel, { cm, height: 170, unit: 'cm' }, data);
      if ('absent' in panel.infrared) {
        expect(found?.eye, panel.slug).toBeUndefined();
        continue;
      }
      const wanted = figureOf(panel.slug, `infrared-share-at-${cm}-cm`);
      expect((found?.eye?.share.value ?? 0) / wanted.value, panel.slug).toBeCloseTo(1, 3);
      expect((found?.eye?.share.high ?? 0) / wanted.high, panel.slug).toBeCloseTo(1, 3);
    }
  });
});

describe('what a session comes to', () => {
  const slug = 'kelpwright-cormorant';
  const plan = { panel: slug, cm: 30, exposure: 10, height: 170, unit: 'cm' } as const;

  test('seconds are 1000 H / E, energy is draw times time, cost is energy times the tariff', () => {
    const found = reckonPlan(panelOf(slug), plan, data);
    const mean = figureOf(slug, 'mean-irradiance-at-30-cm');
    const draw = figureOf(slug, 'mains-draw-combined');
    const seconds = 10_000 / mean.value;
    expect((found?.seconds?.value ?? 0) / seconds).toBeCloseTo(1, 4);
    expect((found?.seconds?.low ?? 0) / (10_000 / mean.high)).toBeCloseTo(1, 4);
    expect((found?.energy?.value ?? 0) / ((draw.value * seconds) / 3.6e6)).toBeCloseTo(1, 4);
    expect((found?.cost?.value ?? 0) / (((draw.value * seconds) / 3.6e6) * 0.31)).toBeCloseTo(1, 4);
    expect(found?.energy?.low).toBeLessThan(found?.energy?.value ?? 0);
  });

  test('without an exposure there are no minutes; without a draw no energy; without a model nothing', () => {
    const { exposure: _, ...none } = plan;
    expect(reckonPlan(panelOf(slug), none, data)).not.toHaveProperty('seconds');
    const dab = reckonPlan(panelOf('quennick-dab'), plan, data);
    expect(dab?.seconds).toBeDefined();
    expect(dab).not.toHaveProperty('energy');
    expect(panelOf('quennick-dab').mains).toHaveProperty('absent');
    expect(reckonPlan(panelOf('ruddlestone-r150'), plan, data)).toBeUndefined();
    expect(panelOf('ruddlestone-r150').reason).toBe('no beam that we know of explains the readings');
  });

  test('a larger panel lights more of a body evenly', () => {
    const share = (of: string) => reckonPlan(panelOf(of), plan, data)?.body.evenShare ?? 0;
    expect(share('quennick-tope')).toBeGreaterThan(share('kelpwright-limpet'));
    expect(share('quennick-tope')).toBeLessThanOrEqual(1);
  });

  test('beyond the table the nearest interval is taken, and said', () => {
    expect(reckonPlan(panelOf(slug), { ...plan, cm: 100 }, data)?.isBeyond).toBe(true);
    expect(reckonPlan(panelOf(slug), { ...plan, cm: 60 }, data)?.isBeyond).toBe(false);
  });

  test('the time to the infrared limit is that of the cautious end', () => {
    const found = reckonPlan(panelOf(slug), plan, data);
    const high = figureOf(slug, 'infrared-share-at-30-cm').high;
    // 18000 t^-0.75 W/m² at 100 W/m² for each 100 %.
    expect((found?.eye?.cautiousSeconds ?? 0) / (18_000 / high) ** (4 / 3)).toBeCloseTo(1, 3);
  });
});

describe('an interval between distances', () => {
  const spread: Array<[number, number, number]> = [
    [10, 0.9, 1.1],
    [40, 0.8, 1.3],
  ];
  test.each([
    [10, 0.9, 1.1],
    [40, 0.8, 1.3],
    // Half way on the logarithm.
    [20, 0.85, 1.2],
    [5, 0.9, 1.1],
    [80, 0.8, 1.3],
  ])('at %d cm', (distance, low, high) => {
    const it = ranged(100, spread, distance);
    expect(it.low).toBeCloseTo(100 * low, 9);
    expect(it.high).toBeCloseTo(100 * high, 9);
  });
});

/** The planner's numbers beside those that the build has worked out. */
import { beforeAll, describe, expect, test } from 'vitest';
import { isFigure } from '../../../../src/measure/figure.ts';
import type { MetricId } from '../../../../src/measure/metrics.ts';
import { calculatePlan, eyeShare, ranged } from '../../../../src/site/plan/browser/plan-calculation.ts';
import { type PlanData, unpackPlan } from '../../../../src/site/plan/browser/plan-panel.ts';
import { planJson } from '../../../../src/site/plan/plan-data.ts';
import { type Demo, demoLedger } from '../../../support/demo-ledger.ts';

let demo: Demo;
let data: PlanData;
beforeAll(() => {
  demo = demoLedger('ruddlestone-r150');
  data = unpackPlan(JSON.parse(planJson(demo.ledger)));
});
const panelOf = (slug: string) => {
  const it = data.panels.find((one) => one.slug === slug);
  if (!it) throw new Error(slug);
  return it;
};
const figureOf = (slug: string, metric: MetricId) => {
  const it = demo.panel(slug).figures.get(metric);
  if (!isFigure(it) || !it.interval95) throw new Error(`${slug}: no ${metric}`);
  return { value: it.value, low: it.interval95[0], high: it.interval95[1] };
};
const modelled = () => data.panels.filter((it) => it.model);

describe('at the distances of the table', () => {
  test.each([5, 10, 15, 30, 45, 60])('%d cm: mean and peak are the table’s, interval and all', (cm) => {
    for (const panel of modelled()) {
      const found = calculatePlan(panel, { cm, height: 170, unit: 'cm' }, data);
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
});

describe('what reaches an eye', () => {
  const withReading = () => data.panels.filter((it) => 'shares' in it.infrared);

  test.each([15, 30, 60] as const)('%d cm: what is said of the infrared limit is what the build says', (cm) => {
    let ranges = 0;
    for (const panel of data.panels) {
      const eye = eyeShare(panel, cm);
      const built = demo.panel(panel.slug).figures.get(`infrared-share-at-${cm}-cm`);
      if (!isFigure(built)) {
        expect(eye, panel.slug).toHaveProperty('unknown');
        continue;
      }
      if ('unknown' in eye) throw new Error(panel.slug);
      // A range stands as a bound at its cautious end, rounded up to three digits.
      const high = built.interval95?.[1] ?? built.value;
      expect(eye.cautious / high, panel.slug).toBeCloseTo(1, 5);
      if (eye.there.kind === 'range') ranges++;
      else expect(eye.there.reading.value / built.value, panel.slug).toBeCloseTo(1, 4);
    }
    if (cm > 15) expect(ranges).toBeGreaterThan(3);
  });

  test('without a reading is not known; nor nearer than the reading, where the time farther away still counts', () => {
    const none = data.panels.filter((it) => 'absent' in it.infrared);
    expect(none.length).toBeGreaterThan(0);
    for (const panel of none) expect(eyeShare(panel, 30)).toEqual({ unknown: expect.stringMatching(/not measured/) });
    for (const panel of withReading()) {
      const reading = figureOf(panel.slug, 'infrared-share-at-reading');
      const eye = eyeShare(panel, 5);
      if (!('unknown' in eye)) throw new Error(panel.slug);
      expect(eye.unknown).not.toMatch(/\d/);
      // 18000 t^-0.75 W/m² at 1 W/m² for each per cent; no time up to 100 W/m².
      const seconds = reading.high <= 100 ? Number.POSITIVE_INFINITY : (18_000 / reading.high) ** (4 / 3);
      if (seconds < 980) expect((eye.secondsFartherAway ?? 0) / seconds, panel.slug).toBeCloseTo(1, 3);
    }
  });

  test('needs no model: a panel that can’t be planned with has its share too', () => {
    const r150 = panelOf('ruddlestone-r150');
    expect(r150.model).toBeUndefined();
    expect(eyeShare(r150, 30)).toHaveProperty('there.kind', 'range');
  });

  test('the time to the infrared limit is that of the cautious end', () => {
    const eye = eyeShare(panelOf('kelpwright-cormorant'), 30);
    const high = figureOf('kelpwright-cormorant', 'infrared-share-at-reading').high;
    if ('unknown' in eye) throw new Error(eye.unknown);
    // The share is rounded up to three digits first.
    expect(eye.cautiousSeconds / (18_000 / Math.ceil(high)) ** (4 / 3)).toBeCloseTo(1, 3);
  });
});

describe('what a session comes to', () => {
  const slug = 'kelpwright-cormorant';
  const plan = { panel: slug, cm: 30, exposure: 10, height: 170, unit: 'cm' } as const;

  test('seconds are 1000 H / E, energy is draw times time, cost is energy times the tariff', () => {
    const found = calculatePlan(panelOf(slug), plan, data);
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
    expect(calculatePlan(panelOf(slug), none, data)).not.toHaveProperty('seconds');
    const dab = calculatePlan(panelOf('quennick-dab'), plan, data);
    expect(dab?.seconds).toBeDefined();
    expect(dab).not.toHaveProperty('energy');
    expect(panelOf('quennick-dab').mains).toHaveProperty('absent');
    expect(calculatePlan(panelOf('ruddlestone-r150'), plan, data)).toBeUndefined();
    expect(panelOf('ruddlestone-r150').reason).toBe('no beam that we know of explains the readings');
  });

  test('a larger panel lights more of a body evenly', () => {
    const share = (of: string) => calculatePlan(panelOf(of), plan, data)?.body.evenShare ?? 0;
    expect(share('quennick-tope')).toBeGreaterThan(share('kelpwright-limpet'));
    expect(share('quennick-tope')).toBeLessThanOrEqual(1);
  });

  test('beyond the table the nearest interval is taken, and said', () => {
    expect(calculatePlan(panelOf(slug), { ...plan, cm: 100 }, data)?.isBeyond).toBe(true);
    expect(calculatePlan(panelOf(slug), { ...plan, cm: 60 }, data)?.isBeyond).toBe(false);
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

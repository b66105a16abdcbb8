import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { NO_INSTRUMENT } from '../../../src/measure/instrument/instrument.ts';
import type { Contender } from '../../../src/measure/money/ranking.ts';
import { stepUpFigures, stepUps } from '../../../src/measure/money/step-ups.ts';
import { figure, line, RUNS, vague } from '../make.ts';

const contender = (panel: string, price: number, watts: number, u = 0): Contender => ({
  panel,
  price,
  power: figure(watts, u === 0 ? [] : [line(`${panel}/own`, u)]),
});
const best = (from: Contender, others: readonly Contender[]) => stepUpFigures(from, others, 'EUR');
const names = (from: Contender, others: readonly Contender[]) => best(from, others).map((it) => it.panel);

// 6 EUR/W.
const SMALL = contender('small', 600, 100);

describe('step-ups', () => {
  test('are larger panels whose extra watts cost less each than the panel’s own', () => {
    const [it] = best(SMALL, [contender('large', 900, 200)]);
    expect(it).toMatchObject({ panel: 'large', extraPrice: 300 });
    expect(it?.extraPower).toMatchObject({ value: 100, unit: 'W', calculation: '200 W − 100 W = 100 W' });
    expect(it?.extraPricePerWatt).toMatchObject({
      value: 3,
      unit: 'currency/W',
      method: { id: 'step-up', version: 3 },
      calculation: '300 EUR ÷ 100 W = 3 EUR/W',
    });
  });

  test('must cost less each: as much is no step up', () => {
    expect(names(SMALL, [contender('b', 899.99, 150)])).toEqual(['b']);
    expect(names(SMALL, [contender('b', 900, 150)])).toEqual([]);
    expect(names(SMALL, [contender('b', 901, 150)])).toEqual([]);
  });

  test('must be larger: an equal or smaller panel is none, at whatever price', () => {
    expect(names(SMALL, [contender('b', 10, 100), contender('c', 10, 99)])).toEqual([]);
  });

  test('never hold the panel itself', () => {
    expect(names(SMALL, [SMALL, { ...SMALL, price: 1, power: figure(500) }])).toEqual([]);
  });

  test('that cost no more have no price for an extra watt', () => {
    const [dear, equal] = [contender('cheaper', 500, 150), contender('as dear', 600, 150)];
    for (const it of best(SMALL, [dear, equal])) {
      expect(it.extraPricePerWatt).toBeNull();
      expect(it.extraPrice).toBeLessThanOrEqual(0);
    }
    expect(names(SMALL, [equal, dear])).toEqual(['cheaper', 'as dear']);
  });

  test('come with the cheapest extra watt first', () => {
    const others = [contender('b', 1000, 200), contender('c', 700, 200), contender('d', 850, 200)];
    expect(names(SMALL, others)).toEqual(['c', 'd', 'b']);
  });

  test('must be shown to be larger: a difference within its uncertainty is none', () => {
    const from = contender('small', 600, 100, 3);
    // u of the difference is 5; 1.96 × 5 = 9.8.
    expect(names(from, [contender('b', 600, 109.7, 4)])).toEqual([]);
    expect(names(from, [contender('b', 600, 109.9, 4)])).toEqual(['b']);
  });

  test('are not hidden by an error that both panels share', () => {
    const sharing = (panel: string, price: number, watts: number): Contender => ({
      panel,
      price,
      power: figure(watts, [line('sensor/calibration', 0.1 * watts)]),
    });
    const own = (panel: string, price: number, watts: number) => contender(panel, price, watts, 0.1 * watts);
    expect(best(sharing('a', 600, 100), [sharing('b', 620, 110)])).toHaveLength(1);
    expect(best(own('a', 600, 100), [own('b', 620, 110)])).toHaveLength(0);
  });

  test('of unknown uncertainty are taken at their value, and say why they have no more', () => {
    const unknown: Contender = { panel: 'b', price: 620, power: vague(101, NO_INSTRUMENT) };
    const [it] = best(SMALL, [{ ...unknown, price: 601 }]);
    expect(it?.extraPower).toMatchObject({
      value: 1,
      standardUncertainty: null,
      uncertaintyAbsent: NO_INSTRUMENT,
    });
    expect(it?.extraPricePerWatt?.uncertaintyAbsent).toBe(NO_INSTRUMENT);
    expect(names(SMALL, [unknown])).toEqual([]);
  });

  test('are worked out ten at most, the best ones; further ones are counted', () => {
    const others = Array.from({ length: 13 }, (_, i) => contender(`panel-${i}`, 900 - 10 * i, 200));
    const it = stepUps(SMALL, others);
    expect(best(SMALL, others).map((step) => step.extraPrice)).toEqual([
      180, 190, 200, 210, 220, 230, 240, 250, 260, 270,
    ]);
    expect(it.more).toBe(3);
    expect(stepUps(SMALL, others.slice(3))).toMatchObject({ best: { length: 10 }, more: 0 });
    expect(stepUps(SMALL, others.slice(0, 2))).toMatchObject({ best: { length: 2 }, more: 0 });
  });

  test('that fall within the uncertainty take no one’s place among the ten', () => {
    // Cheapest by the extra watt, but not shown to be larger.
    const vagueOnes = Array.from({ length: 5 }, (_, i) => contender(`vague-${i}`, 601, 120, 50));
    const firm = Array.from({ length: 12 }, (_, i) => contender(`firm-${i}`, 700 + i, 200));
    const it = stepUps(SMALL, [...vagueOnes, ...firm]);
    expect(it.best).toEqual(firm.slice(0, 10).map((other) => other.panel));
    expect(it.more).toBe(2);
  });

  test('carry the uncertainty of the difference into the price of an extra watt', () => {
    const [it] = best(contender('a', 600, 100, 3), [contender('b', 900, 200, 4)]);
    expect(it?.extraPower.standardUncertainty).toBeCloseTo(5, 12);
    expect((it?.extraPricePerWatt?.standardUncertainty ?? Number.NaN) / 3).toBeCloseTo(0.05, 12);
  });
});

describe('properties', () => {
  const panel = fc.record({
    price: fc.integer({ min: 50, max: 2000 }),
    watts: fc.integer({ min: 10, max: 400 }),
    own: fc.double({ min: 0, max: 0.1, noNaN: true }),
  });
  // At most ten others: so many are worked out.
  const panels = fc.array(panel, { minLength: 1, maxLength: 11 }).map((all) =>
    all.map(
      ({ price, watts, own }, i): Contender => ({
        panel: `panel-${i}`,
        price,
        power: figure(watts, [line('sensor/calibration', 0.03 * watts), line(`panel-${i}/own`, own * watts)]),
      }),
    ),
  );

  test('every step-up is larger beyond its uncertainty, and its extra watts cost less than the panel’s own', () => {
    fc.assert(
      fc.property(panels, (all) => {
        const from = all[0] as Contender;
        for (const it of best(from, all)) {
          const to = all.find((other) => other.panel === it.panel) as Contender;
          const extra = to.power.value - from.power.value;
          expect(it.extraPower.interval95?.[0]).toBeGreaterThan(0);
          expect((to.price - from.price) / extra).toBeLessThan(from.price / from.power.value);
          // Then all watts of the larger panel together cost less each, too.
          expect(to.price / to.power.value).toBeLessThan(from.price / from.power.value);
        }
      }),
      RUNS,
    );
  });

  test('whatever is left out is not cheaper by the extra watt, or not shown to be larger', () => {
    fc.assert(
      fc.property(panels, (all) => {
        const from = all[0] as Contender;
        const found = new Set(best(from, all).map((it) => it.panel));
        for (const to of all.slice(1).filter((other) => !found.has(other.panel))) {
          const extra = to.power.value - from.power.value;
          // Shared: 3 % of the difference. Own: the root of both squares.
          const own = (it: Contender) => it.power.budget[1]?.contribution ?? Number.NaN;
          const u = Math.hypot(0.03 * extra, own(from), own(to));
          const larger = extra > 0 && extra - 1.9599 * u > 1e-9;
          const cheaper = (to.price - from.price) / extra < (from.price / from.power.value) * (1 - 1e-12);
          expect(larger && cheaper).toBe(false);
        }
      }),
      RUNS,
    );
  });

  test('the order of the others does not matter', () => {
    fc.assert(
      fc.property(panels, (all) => {
        const from = all[0] as Contender;
        expect(best(from, all.toReversed())).toEqual(best(from, all));
      }),
      RUNS,
    );
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { closeToFrontier, frontier, type PricedPower } from '../../../src/measure/money/frontier.ts';
import type { Contender } from '../../../src/measure/money/ranking.ts';
import { figure, line, RUNS, vague } from '../make.ts';

const offer = (panel: string, price: number, power: number): PricedPower => ({ panel, price, power });
const names = (offers: readonly PricedPower[]) => offers.map((it) => it.panel);

/** At most as dear and at least as strong, and better in one of the two. */
const beats = (a: PricedPower, b: PricedPower) =>
  a.price <= b.price && a.power >= b.power && (a.price < b.price || a.power > b.power);

describe('the frontier', () => {
  test('holds whatever no other beats, by price', () => {
    const offers = [
      offer('dear and strong', 900, 120),
      offer('beaten', 700, 60),
      offer('cheap and weak', 200, 30),
      offer('middle', 500, 80),
    ];
    expect(names(frontier(offers))).toEqual(['cheap and weak', 'middle', 'dear and strong']);
  });

  test('of one price keeps the strongest, of one power the cheapest', () => {
    expect(names(frontier([offer('a', 500, 80), offer('b', 500, 90)]))).toEqual(['b']);
    expect(names(frontier([offer('a', 500, 80), offer('b', 400, 80)]))).toEqual(['b']);
  });

  test('keeps equal offers together', () => {
    expect(names(frontier([offer('b', 500, 80), offer('a', 500, 80), offer('c', 600, 70)]))).toEqual(['a', 'b']);
  });

  test('of nothing is nothing, and of one is that one', () => {
    expect(frontier([])).toEqual([]);
    expect(names(frontier([offer('a', 500, 80)]))).toEqual(['a']);
  });

  test('leaves its input in its order', () => {
    const offers = [offer('b', 500, 80), offer('a', 400, 90)];
    frontier(offers);
    expect(names(offers)).toEqual(['b', 'a']);
  });
});

describe('properties', () => {
  // Few different values, so that equal prices and powers come up.
  const offers = fc
    .array(fc.record({ price: fc.integer({ min: 1, max: 12 }), power: fc.integer({ min: 1, max: 12 }) }), {
      maxLength: 30,
    })
    .map((all) => all.map((it, i) => offer(`panel-${i}`, it.price, it.power)));

  test('no member is beaten, and everyone else is beaten by a member', () => {
    fc.assert(
      fc.property(offers, (all) => {
        const members = frontier(all);
        const inside = new Set(members);
        for (const it of members) expect(all.some((other) => beats(other, it))).toBe(false);
        for (const it of all.filter((other) => !inside.has(other))) {
          expect(members.some((member) => beats(member, it))).toBe(true);
        }
      }),
      RUNS,
    );
  });

  test('the frontier of a frontier is itself', () => {
    fc.assert(
      fc.property(offers, (all) => {
        expect(frontier(frontier(all))).toEqual(frontier(all));
      }),
      RUNS,
    );
  });

  test('the order of the offers does not matter', () => {
    fc.assert(
      fc.property(
        offers.chain((all) =>
          fc.tuple(fc.constant(all), fc.shuffledSubarray(all, { minLength: all.length, maxLength: all.length })),
        ),
        ([all, shuffled]) => {
          expect(frontier(shuffled)).toEqual(frontier(all));
        },
      ),
      RUNS,
    );
  });

  test('a dearer member is a stronger one', () => {
    fc.assert(
      fc.property(offers, (all) => {
        const members = frontier(all);
        members.slice(1).forEach((it, i) => {
          const before = members[i] as PricedPower;
          if (it.price === before.price) expect(it.power).toBe(before.power);
          else expect(it.power).toBeGreaterThan(before.power);
        });
      }),
      RUNS,
    );
  });
});

describe('close to the frontier', () => {
  const contender = (panel: string, price: number, watts: number, u: number, shared = 0): Contender => ({
    panel,
    price,
    power: figure(watts, [line(`${panel}/own`, u), line('sensor/calibration', shared * watts)]),
  });

  test('is what is beaten by no more than the uncertainty of the difference', () => {
    // u of the difference is 5 W; 1.96 × 5 = 9.8.
    const best = contender('best', 500, 100, 3);
    expect(closeToFrontier([best, contender('b', 550, 90.3, 4)])).toEqual(['b']);
    expect(closeToFrontier([best, contender('b', 550, 90.1, 4)])).toEqual([]);
  });

  test('is nothing that is on the frontier', () => {
    const offers = [contender('weak', 300, 60, 3), contender('strong', 500, 100, 3)];
    expect(closeToFrontier(offers)).toEqual([]);
    expect(closeToFrontier([])).toEqual([]);
  });

  test('must be close to each that beats it', () => {
    const near = contender('near', 500, 100, 3);
    const far = contender('far', 520, 130, 3);
    const it = contender('it', 550, 95, 4);
    expect(closeToFrontier([near, it])).toEqual(['it']);
    expect(closeToFrontier([near, far, it])).toEqual([]);
    // A stronger panel that costs more does not beat it.
    expect(closeToFrontier([near, { ...far, price: 600 }, it])).toEqual(['it']);
  });

  test('does not come from an error that both share', () => {
    const shared = [contender('best', 500, 100, 0.5, 0.1), contender('b', 550, 90, 0.5, 0.1)];
    expect(closeToFrontier(shared)).toEqual([]);
    const own = [contender('best', 500, 100, 10), contender('b', 550, 90, 9)];
    expect(closeToFrontier(own)).toEqual(['b']);
  });

  test('is not said of a difference of unknown uncertainty', () => {
    const unknown: Contender = { panel: 'b', price: 550, power: vague(99) };
    expect(closeToFrontier([contender('best', 500, 100, 3), unknown])).toEqual([]);
  });

  test('is listed cheapest first', () => {
    const best = contender('best', 500, 100, 3);
    const others = [contender('dear', 600, 98, 3), contender('b', 550, 99, 3), contender('a', 550, 98, 3)];
    expect(closeToFrontier([...others, best])).toEqual(['a', 'b', 'dear']);
  });

  test('and the frontier have no panel in common, in whatever order the panels come', () => {
    const panels = fc
      .array(
        fc.record({
          price: fc.integer({ min: 1, max: 12 }),
          watts: fc.integer({ min: 20, max: 30 }),
          u: fc.constantFrom(0.2, 1, 3),
        }),
        { maxLength: 12 },
      )
      .map((all) => all.map(({ price, watts, u }, i) => contender(`panel-${i}`, price, watts, u)));
    fc.assert(
      fc.property(panels, (all) => {
        const close = closeToFrontier(all);
        const on = names(frontier(all.map((it) => offer(it.panel, it.price, it.power.value))));
        expect(close.filter((panel) => on.includes(panel))).toEqual([]);
        expect(closeToFrontier(all.toReversed())).toEqual(close);
      }),
      RUNS,
    );
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { frontier, type Offer } from '../../src/measure/frontier.ts';
import { RUNS } from './make.ts';

const offer = (panel: string, price: number, power: number): Offer => ({ panel, price, power });
const names = (offers: readonly Offer[]) => offers.map((it) => it.panel);

/** At most as dear and at least as strong, and better in one of the two. */
const beats = (a: Offer, b: Offer) =>
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
          const before = members[i] as Offer;
          if (it.price === before.price) expect(it.power).toBe(before.power);
          else expect(it.power).toBeGreaterThan(before.power);
        });
      }),
      RUNS,
    );
  });
});

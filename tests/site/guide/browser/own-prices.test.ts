/** What the browser calculates is what the build calculated, as long as prices are the guide's. */
import { beforeAll, describe, expect, test } from 'vitest';
import { stepUpsOf } from '../../../../src/ledger/step-ups-of.ts';
import { isFigure } from '../../../../src/measure/figure.ts';
import {
  areMeasuredAlike,
  type PackedConditions,
  type PackedOffers,
} from '../../../../src/site/guide/browser/offers.ts';
import {
  calculate,
  lightText,
  type OwnPrices,
  spend,
  spendByClass,
  stepUpsFrom,
} from '../../../../src/site/guide/browser/own-prices.ts';
import { offersJson } from '../../../../src/site/guide/offers-data.ts';
import { showFigure } from '../../../../src/words/format.ts';
import { rankText } from '../../../../src/words/rank-words.ts';
import { type Demo, demoLedger } from '../../../support/demo-ledger.ts';

let demo: Demo;
let offers: PackedOffers;
beforeAll(() => {
  demo = demoLedger();
  offers = JSON.parse(offersJson(demo.ledger));
});
const AS_PUBLISHED: OwnPrices = { own: new Map(), extra: 0 };
const own = (prices: Record<string, number>, extra = 0): OwnPrices => ({ own: new Map(Object.entries(prices)), extra });

describe('at the guide’s prices', () => {
  test('ranks, prices per watt and the frontier are those of the build', () => {
    const { panels, frontier, close } = calculate(offers, AS_PUBLISHED);
    expect(panels.size).toBe([...demo.ledger.panels.values()].filter((it) => it.rank).length);
    for (const [slug, it] of panels) {
      const panel = demo.panel(slug);
      expect(it.rank, slug).toEqual(panel.rank);
      expect(it.emittedRank, slug).toEqual(panel.byEmitted.rank);
      expect(it.isOwn).toBe(false);
      const perWatt = panel.figures.get('price-per-watt');
      if (!isFigure(perWatt)) throw new Error('no price per watt');
      expect(it.perWatt.text).toBe(showFigure({ ...perWatt, unit: '1' }, 'EUR').text);
      const emitted = panel.figures.get('price-per-emitted-watt');
      expect(it.perEmittedWatt?.text).toBe(
        isFigure(emitted) ? showFigure({ ...emitted, unit: '1' }, 'EUR').text : undefined,
      );
    }
    expect(frontier).toEqual(demo.ledger.frontier);
    const closeOnes = [...demo.ledger.panels.values()].filter((it) => it.frontier === 'close').map((it) => it.slug);
    expect(close.toSorted()).toEqual(closeOnes.toSorted());
  });

  test('step-ups are those of the build', () => {
    for (const { slug } of offers.panels) {
      const wanted = stepUpsOf(demo.panel(slug), demo.ledger);
      const found = stepUpsFrom(offers, AS_PUBLISHED, slug);
      expect(
        found.map((it) => it.panel),
        slug,
      ).toEqual(wanted.map((it) => it.panel));
      found.forEach((it, i) => {
        expect(it.extraPower.value).toBeCloseTo(wanted[i]?.extraPower.value ?? Number.NaN, 9);
        const [low, high] = it.extraPower.interval95 ?? [];
        expect(low).toBeCloseTo(wanted[i]?.extraPower.interval95?.[0] ?? Number.NaN, 1);
        expect(high).toBeCloseTo(wanted[i]?.extraPower.interval95?.[1] ?? Number.NaN, 1);
      });
    }
  });
});

describe('tables that can be compared', () => {
  const conditions = (distance: number, version: number, isReference = false): PackedConditions => ({
    distance,
    version,
    isReference,
    sizeClass: 'Any',
  });

  test('are told by what they were measured under, whatever their ids are', () => {
    expect(areMeasuredAlike(conditions(15, 1, true), conditions(15.05, 2, true))).toBe(true);
    expect(areMeasuredAlike(conditions(15, 1, true), conditions(30, 1))).toBe(false);
    expect(areMeasuredAlike(conditions(30, 1), conditions(30, 1))).toBe(true);
    expect(areMeasuredAlike(conditions(30, 1), conditions(30, 3))).toBe(false);
    expect(areMeasuredAlike(conditions(30, 1), conditions(45, 1))).toBe(false);
  });

  test('give step-ups where ids have digits in them', () => {
    const digits = (id: string) => `class-2-${id}`;
    const renamed: PackedOffers = {
      ...offers,
      tables: Object.fromEntries(Object.entries(offers.tables).map(([id, it]) => [digits(id), it])),
      panels: offers.panels.map((it) => ({ ...it, table: digits(it.table) })),
    };
    for (const { slug } of offers.panels) {
      const found = (of: PackedOffers) => stepUpsFrom(of, AS_PUBLISHED, slug).map((it) => it.panel);
      expect(found(renamed), slug).toEqual(found(offers));
    }
  });
});

describe('at other prices', () => {
  test('a price of a watt goes with the price, interval and all', () => {
    const offer = offers.panels.find((it) => it.slug === 'ruddlestone-r60');
    const { panels } = calculate(offers, own({ 'ruddlestone-r60': 2 * (offer?.price ?? 0) }));
    const it = panels.get('ruddlestone-r60');
    expect(it).toMatchObject({ isOwn: true });
    expect(it?.perWatt.amount).toBeCloseTo(2 * (offer?.perWatt[0] ?? 0), 9);
    expect(panels.get('fennimarsh-reed')?.isOwn).toBe(false);
  });

  test('a panel that is given away is first, and on the frontier', () => {
    const { panels, frontier } = calculate(offers, own({ 'kelpwright-limpet': 0.01 }));
    expect(panels.get('kelpwright-limpet')?.rank.place).toBe(1);
    expect(frontier[0]).toBe('kelpwright-limpet');
  });

  test('the same percentage on all leaves the order as it is', () => {
    const plain = calculate(offers, AS_PUBLISHED);
    const dearer = calculate(offers, own({}, 19));
    for (const [slug, it] of dearer.panels) {
      expect(it.rank, slug).toEqual(plain.panels.get(slug)?.rank);
      expect(it.price).toBeCloseTo(1.19 * (plain.panels.get(slug)?.price ?? 0), 9);
      expect(it.isOwn).toBe(true);
    }
    expect(dearer.frontier).toEqual(plain.frontier);
  });
});

describe('what a sum buys', () => {
  test('the strongest panel that it reaches, and those as good within the uncertainty', () => {
    const answer = spend(offers, AS_PUBLISHED, 400);
    const affordable = offers.panels.filter((it) => it.isReference && it.price <= 400);
    const strongest = affordable.toSorted((a, b) => b.optical.value - a.optical.value)[0];
    expect(answer?.best.panel).toBe(strongest?.slug);
    for (const it of answer?.asGood ?? []) expect(it.price).toBeLessThanOrEqual(400);
  });

  test('in each size class what no other affordable panel of it, measured alike, outshines; the strongest first', () => {
    const answers = spendByClass(offers, AS_PUBLISHED, 600);
    expect(answers.length).toBeGreaterThan(2);
    for (const { table, best, asGood } of answers) {
      const affordable = offers.panels.filter((it) => it.isReference && it.table === table && it.price <= 600);
      const strongest = affordable.toSorted((a, b) => b.optical.value - a.optical.value)[0];
      expect(best.panel, table).toBe(strongest?.slug);
      for (const it of asGood) expect(affordable.map(({ slug }) => slug)).toContain(it.panel);
    }
    const powers = answers.map((it) => it.best.power.value);
    expect(powers).toEqual(powers.toSorted((a, b) => b - a));
    // Two of the demonstration that the readings do not tell apart; one that was measured at another distance.
    const desk = answers.find((it) => it.table === 'desk');
    expect([desk?.best.panel, ...(desk?.asGood ?? []).map((it) => it.panel)].toSorted()).toEqual([
      'fennimarsh-reed',
      'ruddlestone-r60',
    ]);
    expect(answers.map((it) => it.best.panel)).not.toContain('ostrel-vagg');
    expect(answers.some((it) => it.table === 'full-length')).toBe(false);
  });

  test('light is shown as on the panels’ own pages, to the last digit', () => {
    for (const offer of offers.panels) {
      const optical = demo.panel(offer.slug).figures.get('optical-power');
      if (!isFigure(optical)) throw new Error('no optical power');
      expect(lightText(offer, 'EUR').text).toBe(showFigure(optical, 'EUR').text);
    }
  });

  test('a price that was asked in another currency is there as it was asked', () => {
    const asked = offers.panels.filter((it) => it.asked);
    expect(asked.map((it) => it.slug)).toContain('fennimarsh-reed');
    for (const it of asked) expect(it.asked).toMatch(/^£/);
  });

  test('nothing where it reaches nothing', () => {
    expect(spendByClass(offers, AS_PUBLISHED, 1)).toEqual([]);
    expect(spend(offers, AS_PUBLISHED, 1)).toBeUndefined();
    expect(spend(offers, own({ 'quennick-sprat': 0.5 }), 1)?.best.panel).toBe('quennick-sprat');
  });
});

test('ranks in words', () => {
  const rank = { panel: 'a', of: 9, tiedWith: [] };
  expect(rankText({ ...rank, place: 2, range: [2, 2] })).toBe('2nd');
  expect(rankText({ ...rank, place: 2, range: [1, 4] })).toBe('1st to 4th');
  expect(rankText({ ...rank, place: 3, range: null })).toBe('3rd');
});

import { beforeAll, expect, test } from 'vitest';
import type { PanelEntry, PriceEntry } from '../../../src/ledger/ledger.ts';
import { priceSteps } from '../../../src/site/panel/price-steps.ts';
import type { PieceElement } from '../../../src/site/shared/browser/pieces.ts';
import { type Demo, demoLedger } from '../../support/demo-ledger.ts';

let demo: Demo;
beforeAll(() => {
  demo = demoLedger();
});

const stepsOf = (panel: PanelEntry) => priceSteps(panel, demo.ledger);
const pathOf = (it: PieceElement | undefined, name: string) =>
  String(
    ((it?.pieces ?? []) as PieceElement[]).find((one) => one.tag === 'path' && one.attributes.class === name)
      ?.attributes.d,
  );
const textsOf = (it: PieceElement | undefined, name: string | undefined) =>
  ((it?.pieces ?? []) as PieceElement[])
    .filter((one) => one.tag === 'text' && one.attributes.class === name)
    .map((one) => String(one.pieces[0]));

test('each price holds until the next, on a scale from nought', () => {
  const panel = demo.panel('kelpwright-gannet');
  const it = stepsOf(panel);
  const paid = pathOf(it, 'paid');
  const heights = [...paid.matchAll(/(?:M[\d.]+ |V)([\d.]+)/g)].map((one) => Number(one[1]));
  const prices = panel.prices.map((one) => one.figure.value).toReversed();
  expect(heights).toHaveLength(prices.length);
  const floor = Number(/M[\d.]+ ([\d.]+)/.exec(pathOf(it, 'axis'))?.[1]);
  const perUnit = (floor - (heights[0] ?? 0)) / (prices[0] ?? 1);
  prices.forEach((price, i) => {
    expect(floor - (heights[i] ?? 0)).toBeCloseTo(perUnit * price, 0);
  });
});

test('the newest price is told at the end, the others where they begin, and the same words tell it all', () => {
  const it = stepsOf(demo.panel('kelpwright-cormorant'));
  expect(textsOf(it, 'paid')).toEqual(['€599', '€549']);
  expect(textsOf(it, 'list')).toEqual(['list €649', 'list €599']);
  expect(it?.attributes['aria-label']).toBe(
    'Prices over time: 10 Oct 2025, list €649, paid €599; 9 Nov 2026, list €599, paid €549',
  );
});

test('prices in another currency are drawn in the guide’s', () => {
  const reed = demo.panel('fennimarsh-reed');
  const [price] = reed.prices as [PriceEntry];
  const earlier = { ...price, price: { ...price.price, date: '2026-01-10' } };
  const label = stepsOf({ ...reed, prices: [price, earlier] })?.attributes['aria-label'];
  expect(label).toContain('list €205.85, paid €182.85');
});

test('a list price that was not recorded leaves a gap in its line', () => {
  const panel = demo.panel('kelpwright-gannet');
  const prices = panel.prices.map((it, i) => {
    if (i !== 1) return it;
    const { list: _list, ...price } = it.price;
    return { ...it, price };
  });
  expect(pathOf(stepsOf({ ...panel, prices }), 'list').match(/M/g)).toHaveLength(2);
});

test('one price alone is not drawn', () => {
  expect(stepsOf(demo.panel('quennick-tope'))).toBeUndefined();
  expect(stepsOf({ ...demo.panel('quennick-tope'), prices: [] })).toBeUndefined();
});

test('many prices close together keep what has room, and nothing is NaN', () => {
  const panel = demo.panel('kelpwright-gannet');
  const [price] = panel.prices as [PriceEntry];
  const prices = Array.from({ length: 60 }, (_, i) => ({
    ...price,
    price: { ...price.price, date: new Date(Date.UTC(2026, 0, 60 - i)).toISOString().slice(0, 10) },
  }));
  const it = stepsOf({ ...panel, prices });
  expect(textsOf(it, undefined).length).toBeLessThan(8);
  expect(JSON.stringify(it)).not.toMatch(/NaN|Infinity/);
});

import { beforeAll, expect, test } from 'vitest';
import { type Figure, isFigure } from '../../../src/measure/figure.ts';
import { priceScale } from '../../../src/site/panel/price-scale.ts';
import type { PieceElement } from '../../../src/site/shared/browser/pieces.ts';
import { type Demo, demoLedger } from '../../support/demo-ledger.ts';

let demo: Demo;
beforeAll(() => {
  demo = demoLedger();
});

const ofClass = (it: PieceElement | undefined, name: string) =>
  (it?.pieces as PieceElement[] | undefined)?.find((one) => one.attributes?.class === name);
const scaleOf = (slug: string) => priceScale(demo.panel(slug), demo.ledger);
const perWatt = (slug: string) => demo.panel(slug).figures.get('price-per-watt') as Figure;
/** A mark's width, and from one to the next, as the style sheet has them. */
const [MARK, GAP] = [1, 2.28];
/** Places of the marks of a path: a line has one at its beginning, and one more with every dash. */
const places = (it: PieceElement | undefined) => {
  let at = 0;
  return [...String(it?.attributes.d ?? '').matchAll(/([Mm])(-?[\d.]+) [\d.]+(?:h([\d.]+))?/g)].flatMap(
    ([, letter, x, length]) => {
      at = letter === 'M' ? Number(x) : at + Number(x);
      if (length === undefined) return [at];
      const count = Math.round((Number(length) - MARK) / (MARK + GAP)) + 1;
      const found = Array.from({ length: count }, (_, i) => at + MARK / 2 + i * (MARK + GAP));
      at += Number(length);
      return found;
    },
  );
};

test('every panel stands on one scale of equal ratios', () => {
  const ranked = [...demo.ledger.panels.values()].filter((it) => it.rank && it.current?.conditions.isReference);
  const points = ranked.map(({ slug }) => ({
    x: places(ofClass(scaleOf(slug), 'own'))[0] as number,
    log: Math.log(perWatt(slug).value),
  }));
  expect(points.length).toBeGreaterThan(8);
  const [first, last] = [points[0], points.find((it) => Math.abs(it.log - (points[0]?.log ?? 0)) > 0.5)];
  const slope = ((last?.x ?? 0) - (first?.x ?? 0)) / ((last?.log ?? 0) - (first?.log ?? 0));
  for (const it of points) expect(it.x).toBeCloseTo((first?.x ?? 0) + slope * (it.log - (first?.log ?? 0)), 0);
});

test('the interval is that of the figure, and the others stand by their size', () => {
  const scale = scaleOf('kelpwright-gannet');
  const at = places(ofClass(scale, 'own'))[0] as number;
  const { x, width } = (ofClass(scale, 'interval')?.attributes ?? {}) as { x: number; width: number };
  expect(x).toBeLessThan(at);
  expect(x + width).toBeGreaterThan(at);
  // The Tope is the other one of full length.
  expect(places(ofClass(scale, 'alike'))).toHaveLength(1);
  const tope = places(ofClass(scaleOf('quennick-tope'), 'own'))[0] as number;
  expect(Math.abs((places(ofClass(scale, 'alike'))[0] as number) - tope)).toBeLessThan(2);
  expect(places(ofClass(scale, 'other')).length).toBeGreaterThan(5);
  expect(scale?.attributes['aria-label']).toMatch(
    /^€4\.\d+ ± [\d.]+\/W on the scale of all panels, from €\d+ to €\d+$/,
  );
});

test('a panel that nothing is ranked with, or that was read elsewhere, has none', () => {
  expect(scaleOf('ostrel-bord')).toBeUndefined();
  expect(scaleOf('ostrel-vagg')).toBeUndefined();
  expect(isFigure(perWatt('ostrel-vagg'))).toBe(true);
});

test('a small change of another’s price mostly leaves the drawing as it was', () => {
  const before = JSON.stringify(scaleOf('kelpwright-gannet'));
  const panels = new Map(demo.ledger.panels);
  const tope = demo.panel('quennick-tope');
  const own = perWatt('quennick-tope');
  panels.set('quennick-tope', {
    ...tope,
    figures: new Map(tope.figures).set('price-per-watt', { ...own, value: 1.0001 * own.value }),
  });
  const after = priceScale(demo.panel('kelpwright-gannet'), { ...demo.ledger, panels });
  expect(JSON.stringify(after)).toBe(before);
});

test('marks that stand side by side are one line, in whose dashes each has its place', () => {
  const { ledger } = demo;
  const price = (slug: string, value: number) => {
    const it = demo.panel(slug);
    return { ...it, figures: new Map(it.figures).set('price-per-watt', { ...perWatt(slug), value }) };
  };
  const others = [...ledger.panels.values()].filter(
    (it) => it.rank && it.current?.conditions.isReference && it.sizeClass !== demo.panel('kelpwright-gannet').sizeClass,
  );
  const from = perWatt('kelpwright-gannet').value;
  const at = (values: readonly number[]) => {
    const panels = new Map(ledger.panels);
    for (const [i, it] of others.entries()) panels.set(it.slug, price(it.slug, values[i % values.length] as number));
    return places(ofClass(priceScale(demo.panel('kelpwright-gannet'), { ...ledger, panels }), 'other'));
  };
  // A scale of equal ratios: a thousandth more is the same place, and few hundredths are the next.
  const marks = at(Array.from({ length: 12 }, (_, i) => from * 1.03 ** i));
  const steps = marks.slice(1).map((x, i) => (x - (marks[i] ?? 0)) / (MARK + GAP));
  expect(marks.length).toBeGreaterThan(4);
  for (const it of steps) expect(Math.abs(it - Math.round(it))).toBeLessThan(0.05);
  expect(steps.some((it) => Math.round(it) === 1)).toBe(true);
  expect(steps.every((it) => it > 0.9)).toBe(true);
});

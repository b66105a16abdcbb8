import { beforeAll, describe, expect, test } from 'vitest';
import type { Content } from '../../src/content/read/content.ts';
import { buildLedger } from '../../src/ledger/build-ledger.ts';
import { type GuideEvent, guideEvents } from '../../src/ledger/events.ts';
import { isFigure } from '../../src/measure/figure.ts';
import { TODAY } from '../support/content-folder.ts';
import { type Demo, demoLedger } from '../support/demo-ledger.ts';

let demo: Demo;
let events: GuideEvent[];
beforeAll(() => {
  demo = demoLedger();
  events = guideEvents(demo.ledger);
});

const of = <Kind extends GuideEvent['kind']>(kind: Kind) =>
  events.filter((it): it is GuideEvent & { kind: Kind } => it.kind === kind);

test('every session of the files is a test or a re-test, on its day', () => {
  const sessions = [...demo.content.panels].flatMap(([slug, { data }]) =>
    data.status === 'draft' ? [] : data.sessions.filter((it) => !it.draft).map(({ date }) => `${slug} ${date}`),
  );
  const told = [...of('tested'), ...of('retested')].map((it) => `${it.panel.slug} ${it.date}`);
  expect(told.toSorted()).toEqual(sessions.toSorted());
  expect(of('retested').map((it) => it.id)).toEqual([
    'retested-2026-11-24-fennimarsh-sedge',
    'retested-2026-10-20-kelpwright-cormorant',
  ]);
});

test('newest first, each id once, none ahead of today, the same whatever the day of the build', () => {
  const days = events.map((it) => it.date);
  expect(days).toEqual(days.toSorted().reverse());
  expect(new Set(events.map((it) => it.id)).size).toBe(events.length);
  expect(days.every((it) => it <= TODAY)).toBe(true);
  const [later, muchLater] = ['2027-03-01', '2027-06-01'].map((today) =>
    guideEvents({ ...demo.ledger, today }).map((it) => it.id),
  );
  expect(muchLater).toEqual(later);
  // What is of a later day than the tests' own comes first.
  expect(later?.slice(-events.length)).toEqual(events.map((it) => it.id));
});

describe('prices', () => {
  test('those that move a place, with the places by prices of the day and the day before', () => {
    const told = of('prices').map(({ id, of: count, changes, moves }) => [
      id,
      count,
      changes.map((it) => [it.panel.slug, it.was.price.paid, it.now.price.paid]),
      moves.map((it) => [it.panel.slug, it.was, it.now]),
    ]);
    expect(told).toEqual([
      [
        'prices-2026-11-18-full-length',
        2,
        [['kelpwright-gannet', 999, 849]],
        [
          ['kelpwright-gannet', 2, 1],
          ['quennick-tope', 1, 2],
        ],
      ],
      [
        'prices-2026-11-09-torso',
        2,
        [['kelpwright-cormorant', 599, 549]],
        [
          ['kelpwright-cormorant', 2, 1],
          ['ruddlestone-r150', 1, 2],
        ],
      ],
    ]);
  });

  test('by another road: the price of a watt of both panels, divided by hand', () => {
    const watt = (slug: string, price: number) => {
      const power = demo.panel(slug).figures.get('optical-power');
      return isFigure(power) ? price / power.value : Number.NaN;
    };
    const tope = watt('quennick-tope', demo.panel('quennick-tope').prices.at(-1)?.figure.value ?? 0);
    expect(watt('kelpwright-gannet', 999)).toBeGreaterThan(tope);
    expect(watt('kelpwright-gannet', 849)).toBeLessThan(tope);
  });

  test('one that moves no place is no event, nor one from before the panel was read', () => {
    const withPaid = (paid: number, date: string): Content => {
      const entry = demo.content.panels.get('kelpwright-gannet');
      if (!entry) throw new Error('no such panel');
      const prices = entry.data.prices.map((it) => (it.paid === 849 ? { ...it, paid, date } : it));
      const changed = { ...entry, data: { ...entry.data, prices } };
      return { ...demo.content, panels: new Map([...demo.content.panels, ['kelpwright-gannet', changed]]) };
    };
    const days = (content: Content) =>
      guideEvents(buildLedger(content, { today: TODAY }))
        .filter((it) => it.kind === 'prices')
        .map((it) => it.date);
    expect(days(withPaid(998, '2026-11-18'))).toEqual(['2026-11-09']);
    expect(days(withPaid(849, '2026-11-16'))).toEqual(['2026-11-09']);
  });
});

test('a withdrawal has the day that the file has for it, methods come together by their day', () => {
  expect(of('withdrawn').map((it) => it.id)).toEqual(['withdrawn-2026-10-19-ostrel-bord']);
  expect(of('methods').every((it) => it.changed.length + it.added.length > 0)).toBe(true);
  // What there was before the first session is no change of the guide.
  expect(of('methods').map((it) => it.date)).toEqual(['2026-11-25', '2026-09-10']);
  expect(of('correction').map((it) => it.correction.panel)).toEqual(['ruddlestone-r60']);
});

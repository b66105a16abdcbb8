import { beforeAll, describe, expect, test } from 'vitest';
import type { Ledger, PanelEntry } from '../../src/ledger/ledger.ts';
import { orderDisagreement } from '../../src/ledger/order-disagreement.ts';
import type { Rank } from '../../src/measure/money/ranking.ts';
import { disagreementRemark, rankSentence } from '../../src/site/guide/rank-sentence.ts';
import { type Demo, demoLedger } from '../support/demo-ledger.ts';

let demo: Demo;
beforeAll(() => {
  demo = demoLedger();
});

/** Two panels of one class whose places are told for either watt: `1`, `1=` for a tie, `1?` where the range is not known. */
function made(one: readonly [framed: string, emitted: string], other: readonly [framed: string, emitted: string]) {
  const slugs = ['fennimarsh-reed', 'ruddlestone-r60'] as const;
  const rank = (at: 0 | 1, text: string): Rank => ({
    panel: slugs[at],
    place: Number.parseInt(text, 10),
    of: 2,
    range: text.endsWith('?') ? null : [Number.parseInt(text, 10), Number.parseInt(text, 10)],
    tiedWith: text.endsWith('=') ? [slugs[at === 0 ? 1 : 0]] : [],
  });
  const panels = [one, other].map(
    ([framed, emitted], i): PanelEntry => ({
      ...demo.panel(slugs[i === 0 ? 0 : 1]),
      rank: rank(i === 0 ? 0 : 1, framed),
      byEmitted: { rank: rank(i === 0 ? 0 : 1, emitted), rankAbsent: undefined },
    }),
  );
  const [first, second] = panels as [PanelEntry, PanelEntry];
  const desk = demo.ledger.classes.find((it) => it.sizeClass?.id === 'desk');
  if (!desk?.groups[0]) throw new Error('the demonstration has no class desk');
  const classes = [{ ...desk, groups: [{ ...desk.groups[0], panels }] }];
  const ledger: Ledger = { ...demo.ledger, classes, panels: new Map(panels.map((it) => [it.slug, it])) };
  return { first, second, ledger };
}

describe('where the two watts put panels in opposite orders', () => {
  test('beyond both uncertainties, both panels tell of it', () => {
    const { first, second, ledger } = made(['1', '2'], ['2', '1']);
    expect(orderDisagreement(first, ledger)).toEqual({ behind: [second], before: [] });
    expect(orderDisagreement(second, ledger)).toEqual({ behind: [], before: [first] });
    expect(disagreementRemark(first, 'optical')).toBe('2nd by all the light');
    expect(disagreementRemark(first, 'emitted')).toBe('1st by the light in the frame');
    expect(rankSentence(first, ledger)).toBe(
      '1st of 2 in the class Desk. By all the light that leaves the LEDs it comes behind Ruddlestone R60 instead, beyond the uncertainty.',
    );
    expect(rankSentence(second, ledger)).toContain('it comes before Fennimarsh Electric Reed instead');
  });

  test.each([
    ['in the same order', ['1', '1'], ['2', '2']],
    ['a tie in the frame', ['1=', '2'], ['2=', '1']],
    ['a tie by all the light', ['1', '2='], ['2', '1=']],
    ['an uncertainty that is not known', ['1?', '2'], ['2', '1']],
  ] as const)('not by %s', (_, one, other) => {
    const { first, second, ledger } = made(one, other);
    expect(orderDisagreement(first, ledger)).toBeUndefined();
    expect(orderDisagreement(second, ledger)).toBeUndefined();
    expect(rankSentence(first, ledger)).not.toContain('By all the light');
  });

  test('a panel without an emitted watt is in no such order', () => {
    const { first, second, ledger } = made(['1', '2'], ['2', '1']);
    const panels = [first, { ...second, byEmitted: { rank: undefined, rankAbsent: undefined } }];
    const [desk] = ledger.classes;
    const classes = desk?.groups[0] ? [{ ...desk, groups: [{ ...desk.groups[0], panels }] }] : [];
    expect(orderDisagreement(first, { ...ledger, classes })).toBeUndefined();
  });

  test('in the demonstration just those pairs that neither order leaves open', () => {
    for (const panel of demo.ledger.panels.values()) {
      const group = demo.ledger.classes.flatMap((it) => it.groups).find((it) => it.panels.includes(panel));
      const opposite = (group?.panels ?? []).filter((other) => {
        const [a, b, c, d] = [panel.rank, other.rank, panel.byEmitted.rank, other.byEmitted.rank];
        if (!a || !b || !c || !d || other === panel) return false;
        const isOpen = a.tiedWith.includes(other.slug) || c.tiedWith.includes(other.slug);
        return !isOpen && Math.sign(a.place - b.place) === -Math.sign(c.place - d.place) && a.place !== b.place;
      });
      const found = orderDisagreement(panel, demo.ledger);
      expect([...(found?.behind ?? []), ...(found?.before ?? [])].map((it) => it.slug).toSorted(), panel.name).toEqual(
        opposite.map((it) => it.slug).toSorted(),
      );
    }
  });
});

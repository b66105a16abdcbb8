/** The page of cards lists each card that is made, once, and nothing else. */
import { expect, test } from 'vitest';
import { cardsView } from '../../../src/site/cards/cards-view.ts';
import { drawnCards } from '../../../src/site/cards/drawn-cards.ts';
import { demoLedger } from '../../support/demo-ledger.ts';

const { ledger } = demoLedger();
const asking = (cards: typeof ledger.guide.cards) => ({ ...ledger, guide: { ...ledger.guide, cards } });

test('every card to show is listed once, under its panel or the question that its method answers', () => {
  const show = asking({ preview: false, show: true, badges: false });
  const { panels, methods, frame } = cardsView(show);
  const listed = [...panels.flatMap((it) => it.cards ?? []), ...methods.flatMap((it) => it.cards)];
  const files = listed.flatMap((it) => it.files.flatMap(({ png, svg }) => [svg, png]));
  expect(files.toSorted()).toEqual(
    drawnCards(show)
      .map((it) => it.address)
      .toSorted(),
  );
  expect(frame).toBeUndefined();
  expect(panels.map((it) => it.name)).toEqual(panels.map((it) => it.name).toSorted());
});

test('where badges alone are asked for, panels have these, and no method stands there', () => {
  const { panels, methods, frame } = cardsView(asking({ preview: true, show: false, badges: true }));
  expect(panels.every((it) => it.cards === undefined && it.badges.length > 0)).toBe(true);
  expect(methods).toEqual([]);
  expect(frame?.address).toBe(panels[0]?.badges[0]?.picture.replace('.svg', '.html'));
});

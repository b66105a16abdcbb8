/** Threads that draw cards: the same bytes as without, and silence about what they can't draw or write. */
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { drawInThreads } from '../../../src/build/cards/card-threads.ts';
import { keptCards } from '../../../src/build/cards/kept-cards.ts';
import { type MarkedCard, makeCard } from '../../../src/build/cards/make-card.ts';
import { drawnCards } from '../../../src/site/cards/drawn-cards.ts';
import { demoLedger } from '../../support/demo-ledger.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'cards-'));
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

/** Cards of two panels and a method, those of each together. */
function someCards(): MarkedCard[][] {
  const of = /^\/cards\/(kelpwright-gannet|quennick-dab|methods\/rank)\//;
  const cards = drawnCards(demoLedger().ledger).filter(({ address }) => of.test(address));
  return [...Map.groupBy(cards, ({ view }) => view).values()].map((own, i) =>
    own.map((card, j) => ({ card, mark: `${i}a${j}` })),
  );
}

/** The bytes of each card in a store. */
const bytesIn = (store: string) =>
  Object.fromEntries(
    [...keptCards(store)].toSorted().map(([mark, file]) => [mark, readFileSync(file).toString('base64')]),
  );

test('cards are the same with threads and without, whichever comes first', async () => {
  const [cards, here, there] = [someCards(), join(folder, 'here'), join(folder, 'there')];
  expect(cards.map((it) => it.length)).toEqual([7, 7, 6]);
  for (const it of cards.flat().toReversed()) await makeCard(it, here);
  await drawInThreads(cards, there).finish();
  expect(bytesIn(there)).toEqual(bytesIn(here));
  expect(Object.keys(bytesIn(there))).toHaveLength(20);
});

test('a card that can’t be drawn is silently left to the caller, who hears why', async () => {
  const [good = [], [bad] = []] = someCards();
  const broken = { ...bad, card: { ...bad?.card, layout: undefined } } as unknown as MarkedCard;
  await drawInThreads([good, [broken]], folder).finish();
  expect(keptCards(folder).size).toBe(good.length);
  await expect(makeCard(broken, folder)).rejects.toThrow(TypeError);
});

test('a store that can’t be written leaves nothing, and no half of a card', async () => {
  const store = join(folder, 'store');
  writeFileSync(store, 'a file in its place');
  await drawInThreads(someCards(), store).finish();
  expect(readFileSync(store, 'utf8')).toBe('a file in its place');
  await expect(makeCard(someCards().flat()[0] as MarkedCard, store)).rejects.toThrow(/ENOTDIR|EEXIST/);
});

test('a build that has failed lets them end with what they are at', async () => {
  mkdirSync(join(folder, 'store'));
  const cards = Array.from({ length: 40 }, (_, i) =>
    someCards()
      .flat()
      .map(({ card, mark }) => ({ card, mark: `${i}b${mark}` })),
  );
  const threads = drawInThreads(cards, join(folder, 'store'));
  threads.stop();
  await threads.finish();
  expect(readdirSync(join(folder, 'store')).length).toBeLessThan(40 * 20);
});

/** Cards are drawn once: kept by what they are drawn of, and drawn anew only where that has changed. */
import { readFileSync, statSync } from 'node:fs';
import { beforeAll, expect, test } from 'vitest';
import { cardAt } from '../../../src/build/cards/card-store.ts';
import type { Ledger } from '../../../src/ledger/ledger.ts';
import { drawnCards } from '../../../src/site/cards/drawn-cards.ts';
import { demoLedger } from '../../support/demo-ledger.ts';

let ledger: Ledger;
beforeAll(() => {
  ledger = demoLedger().ledger;
});

/** What each card is drawn of, by its address. */
const drawnOf = (it: Ledger) => new Map(drawnCards(it).map((card) => [card.address, card.drawnOf]));

test('a changed panel has its own cards drawn anew, and nobody else’s', () => {
  const panels = new Map(ledger.panels);
  const gannet = panels.get('kelpwright-gannet');
  if (!gannet) throw new Error('no such panel');
  panels.set('kelpwright-gannet', { ...gannet, data: { ...gannet.data, status: 'withdrawn' } });
  const [before, after] = [drawnOf(ledger), drawnOf({ ...ledger, panels })];
  const changed = [...after].filter(([address, it]) => before.get(address) !== it).map(([address]) => address);
  expect(changed).toHaveLength(7);
  expect(changed.every((it) => it.startsWith('/cards/kelpwright-gannet/'))).toBe(true);
});

test('one that is kept is not made again', async () => {
  const address = '/cards/kelpwright-limpet/preview.png';
  const path = (await cardAt(ledger, address)) ?? '';
  expect(readFileSync(path).subarray(1, 4).toString('latin1')).toBe('PNG');
  const made = statSync(path);
  expect(await cardAt({ ...ledger }, address)).toBe(path);
  expect(statSync(path)).toMatchObject({ ino: made.ino, mtimeMs: made.mtimeMs });
  expect(await cardAt(ledger, '/cards/none/preview.png')).toBeUndefined();
});

test('for links alone a method has its wide card’s picture, and a panel its own', () => {
  const cards = { preview: true, show: false, badges: false };
  const all = drawnCards({ ...ledger, guide: { ...ledger.guide, cards } }).map((it) => it.address);
  expect(all.filter((it) => it.includes('/methods/')).length).toBeGreaterThan(20);
  expect(all.every((it) => /\/(preview|methods\/[^/]+\/wide)\.png$/.test(it))).toBe(true);
});

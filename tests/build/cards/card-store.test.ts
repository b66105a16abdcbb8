/** Cards are drawn once: kept by what they are drawn of, and drawn anew only where that has changed. */
import {
  appendFileSync,
  existsSync,
  linkSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { cardAt } from '../../../src/build/cards/card-store.ts';
import { keepCard, keptCards } from '../../../src/build/cards/kept-cards.ts';
import { forgetOld, noteUse } from '../../../src/build/forget-old.ts';
import type { Ledger } from '../../../src/ledger/ledger.ts';
import { drawnCards, drawnOf } from '../../../src/site/cards/drawn-cards.ts';
import { demoLedger } from '../../support/demo-ledger.ts';

let ledger: Ledger;
beforeAll(() => {
  ledger = demoLedger().ledger;
});

/** What each card is drawn of, by its address. */
const recipes = (it: Ledger) => new Map(drawnCards(it).map((card) => [card.address, drawnOf(card)]));

test('a changed panel has its own cards drawn anew, and nobody else’s', () => {
  const panels = new Map(ledger.panels);
  const gannet = panels.get('kelpwright-gannet');
  if (!gannet) throw new Error('no such panel');
  panels.set('kelpwright-gannet', { ...gannet, data: { ...gannet.data, status: 'withdrawn' } });
  const [before, after] = [recipes(ledger), recipes({ ...ledger, panels })];
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

test('one that somebody has written into, as by a link to it in the output, is no card', () => {
  const store = mkdtempSync(join(tmpdir(), 'cards-'));
  try {
    const [kept, longer, touched] = ['a', 'b', 'c'].map((it) =>
      keepCard(store, it, '/cards/it.svg', Buffer.from('<svg/>')),
    );
    expect([...keptCards(store).values()].toSorted()).toEqual([kept, longer, touched].toSorted());
    linkSync(longer as string, join(store, 'output.svg'));
    appendFileSync(join(store, 'output.svg'), '<!-- mine -->');
    writeFileSync(touched as string, '<SVG/>');
    expect([...keptCards(store)]).toEqual([['a', kept]]);
  } finally {
    rmSync(store, { recursive: true });
  }
});

test('a use is noted without a change to the card, and one without a use for long is let go', () => {
  const store = mkdtempSync(join(tmpdir(), 'cards-'));
  try {
    const [used, unused] = ['a', 'b'].map((it) => keepCard(store, it, '/cards/it.svg', Buffer.from('<svg/>'))) as [
      string,
      string,
    ];
    const long = Date.now() / 1000 - 100 * 86_400;
    for (const it of [used, unused]) utimesSync(it, long, statSync(it).mtimeMs / 1000);
    noteUse(used);
    forgetOld(store);
    expect([...keptCards(store)]).toEqual([['a', used]]);
    expect(existsSync(unused)).toBe(false);
  } finally {
    rmSync(store, { recursive: true });
  }
});

test('for links alone a method has its wide card’s picture, and a panel its own', () => {
  const cards = { preview: true, show: false, badges: false };
  const all = drawnCards({ ...ledger, guide: { ...ledger.guide, cards } }).map((it) => it.address);
  expect(all.filter((it) => it.includes('/methods/')).length).toBeGreaterThan(20);
  expect(all.every((it) => /\/(preview|methods\/[^/]+\/wide)\.png$/.test(it))).toBe(true);
});

import { createHash } from 'node:crypto';
import { mkdirSync, statSync, utimesSync } from 'node:fs';
import { constants, copyFile } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import { dirname, extname, join } from 'node:path';
import { cacheFolder } from '../../content/read/cache-folder.ts';
import { writeWhole } from '../../content/read/write-whole.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { type DrawnCard, drawnCards } from '../../site/cards/drawn-cards.ts';
import { forgetOld } from '../forget-old.ts';
import { buildStamp } from '../source-stamp.ts';
import { pictureOf } from './picture-of.ts';

/** Cards are kept under what they are drawn of, so that a build draws and makes pictures only of those that have changed. */
const store = () => join(cacheFolder(), 'cards');

/** Lays every card that the guide asks for into the output; without any it costs nothing. */
export async function writeCards(ledger: Ledger, folder: string): Promise<void> {
  const waiting = drawnCards(ledger);
  if (waiting.length === 0) return;
  for (const it of new Set(waiting.map(({ address }) => dirname(join(folder, address)))))
    mkdirSync(it, { recursive: true });
  const worker = async () => {
    for (let card = waiting.shift(); card; card = waiting.shift()) {
      await copyFile(await made(card), join(folder, card.address), constants.COPYFILE_FICLONE);
    }
  };
  await Promise.all(Array.from({ length: availableParallelism() }, worker));
  await forgetOld(store());
}

/** The file of one card, made now if need be; undefined where no card has that address. */
export async function cardAt(ledger: Ledger, address: string): Promise<string | undefined> {
  const card = drawnCards(ledger).find((it) => it.address === address);
  return card && made(card);
}

/** What is used has its day renewed, which is looked at after weeks: no more often than once a day. */
const DAY = 86_400_000;

/** Where a card is kept; it is made where it is not there. */
async function made(card: DrawnCard): Promise<string> {
  // The code stands for the recipe, the typefaces and the libraries too.
  const mark = createHash('sha256')
    .update(`${buildStamp()}\n${card.pixels}\n${card.perInch}\n${card.drawnOf}`)
    .digest('hex')
    .slice(0, 24);
  const path = join(store(), `${mark}${extname(card.address)}`);
  const kept = statSync(path, { throwIfNoEntry: false });
  if (kept) {
    const now = new Date();
    if (now.getTime() - kept.mtimeMs > DAY) utimesSync(path, now, now);
    return path;
  }
  // Two workers, or two processes, may draw the same one.
  writeWhole(path, card.pixels === undefined ? card.svg() : await pictureOf(card.drawing(), card.pixels, card.perInch));
  return path;
}

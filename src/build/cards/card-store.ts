import { createHash } from 'node:crypto';
import { mkdirSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { dirname, join } from 'node:path';
import { cacheFolder } from '../../content/read/cache-folder.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { type DrawnCard, drawnCards, drawnOf } from '../../site/cards/drawn-cards.ts';
import { forgetOld, noteUse } from '../forget-old.ts';
import { linkOrCopy } from '../lay-file.ts';
import { buildStamp } from '../source-stamp.ts';
import { drawInThreads } from './card-threads.ts';
import { keptCards } from './kept-cards.ts';
import { type MarkedCard, makeCard } from './make-card.ts';

/** Cards are kept under what they are drawn of, so that a build draws and makes pictures only of those that have changed. */
const store = () => join(cacheFolder(), 'cards');

/** Cards of a build, on their way. */
export interface BegunCards {
  /** Lays every card into the output. @throws where one can't be drawn or written */
  layInto(folder: string): Promise<void>;
  /** Draws no more of them: the build has failed. */
  stop(): void;
}

/** Begins to draw what of the guide's cards is not kept, beside what else a build does; without cards it costs nothing. */
export function beginCards(ledger: Ledger): BegunCards {
  const cards = drawnCards(ledger).map(marked);
  if (cards.length === 0) return { layInto: async () => {}, stop: () => {} };
  const kept = keptCards(store());
  const unmade = Map.groupBy(
    cards.filter(({ mark }) => !kept.has(mark)),
    ({ card }) => card.view,
  );
  const threads = unmade.size > 0 ? drawInThreads([...unmade.values()], store()) : undefined;
  return {
    layInto: async (folder) => {
      await threads?.finish();
      await layCards(cards, threads ? keptCards(store()) : kept, folder);
      forgetOld(store());
    },
    stop: () => threads?.stop(),
  };
}

async function layCards(
  cards: readonly MarkedCard[],
  kept: ReadonlyMap<string, string>,
  folder: string,
): Promise<void> {
  const targetOf = ({ card }: MarkedCard) => join(folder, card.address);
  for (const it of new Set(cards.map((card) => dirname(targetOf(card))))) mkdirSync(it, { recursive: true });
  const waiting = [...cards];
  const lay = async () => {
    for (let it = waiting.shift(); it; it = waiting.shift()) await linkOrCopy(await fileOf(it, kept), targetOf(it));
  };
  await Promise.all(Array.from({ length: availableParallelism() }, lay));
}

/** The file of one card, made now if need be; undefined where no card has that address. */
export async function cardAt(ledger: Ledger, address: string): Promise<string | undefined> {
  const card = drawnCards(ledger).find((it) => it.address === address);
  return card && fileOf(marked(card), keptCards(store()));
}

/** A card with what it is kept under. The code stands for the recipe, the typefaces and the libraries too. */
function marked(card: DrawnCard): MarkedCard {
  const hash = createHash('sha256').update(`${buildStamp()}\n${drawnOf(card)}`);
  return { card, mark: hash.digest('hex').slice(0, 24) };
}

/** The file of a card, which counts as a use of it; made where it is not there. */
async function fileOf(card: MarkedCard, kept: ReadonlyMap<string, string>): Promise<string> {
  const file = kept.get(card.mark);
  if (file === undefined) return makeCard(card, store());
  noteUse(file);
  return file;
}

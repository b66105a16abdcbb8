import type { Loaded } from '../ledger/load-ledger.ts';
import { publishedFiles } from '../site/export/published-files.ts';
import { siteLedger } from '../site/shared/site-ledger.ts';
import { writeBenchFiles } from './bench-files/write-bench-files.ts';
import { writeBenchWorker } from './bench-worker-file.ts';
import { type BegunCards, beginCards } from './cards/card-store.ts';
import type { keptPages } from './kept-pages.ts';
import { writePhotos } from './photos/photo-store.ts';
import { ASSETS } from './places.ts';
import { tellStage } from './progress.ts';
import { replaceFolder } from './replace-folder.ts';
import { indexPages } from './search-index.ts';
import { prefixPages } from './serve/prefix-pages.ts';
import { buildStamp } from './source-stamp.ts';
import { writeFiles } from './write-files.ts';

interface FinishedPages {
  grown: string;
  target: string;
  base: string;
  indexed?: Promise<void>;
  cards?: BegunCards;
}

/**
 * What comes after the pages: writes the data files and pictures while they are indexed for search, and lets the whole take
 * the place of the last good output.
 *
 * @param pages what is kept of the build before, and of this one from here on
 * @param places where the pages are, where the guide is to be, and its path on its host; and their index and the cards,
 * where these are being made already
 * @throws where something can't be written; the target is as it was then
 */
export async function finishSite(
  { ledger }: Loaded,
  pages: ReturnType<typeof keptPages>,
  { grown, target, base, indexed = indexPages(grown), cards = beginCards(ledger) }: FinishedPages,
): Promise<void> {
  tellStage('Search index and data files', true);
  try {
    // The indexer is a process of its own, and reads none of these.
    // Of the ledger that notes what is read of it, as pages are.
    await writeFiles(publishedFiles(siteLedger(), { code: buildStamp(), isTester: false }), grown, pages);
    pages.close();
    await writePhotos(ledger, grown);
    await writeBenchFiles(ledger, grown);
    await cards.layInto(grown);
  } finally {
    await indexed;
  }
  writeBenchWorker(grown);
  await prefixPages(grown, base, ASSETS);
  tellStage('Putting the guide in its place', true);
  await replaceFolder(grown, target);
}

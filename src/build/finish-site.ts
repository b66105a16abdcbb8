import type { Loaded } from '../ledger/load-ledger.ts';
import { publishedFiles } from '../site/export/published-files.ts';
import { writeBenchFiles } from './bench-files/write-bench-files.ts';
import { writeBenchWorker } from './bench-worker-file.ts';
import { writeCards } from './cards/card-store.ts';
import { writePhotos } from './photos/photo-store.ts';
import { ASSETS } from './places.ts';
import { tellStage } from './progress.ts';
import { replaceFolder } from './replace-folder.ts';
import { indexPages } from './search-index.ts';
import { prefixPages } from './serve/prefix-pages.ts';
import { sourceStamp } from './source-stamp.ts';
import { writeFiles } from './write-files.ts';

/**
 * What comes after the pages: indexes them for search, writes the data files and pictures meanwhile, and lets the whole
 * take the place of the last good output.
 *
 * @param loaded what the pages are made of
 * @param grown where the pages are
 * @param target where the guide is to be
 * @param base its path on its host
 * @throws where something can't be written; the target is as it was then
 */
export async function finishSite(loaded: Loaded, grown: string, target: string, base: string): Promise<void> {
  tellStage('Search index and data files', true);
  const indexed = indexPages(grown);
  try {
    // The indexer is a process of its own, and reads none of these.
    await writeFiles(publishedFiles(loaded, { code: sourceStamp(), isTester: false }), grown);
    await writePhotos(loaded.ledger, grown);
    await writeBenchFiles(loaded.ledger, grown);
    await writeCards(loaded.ledger, grown);
  } finally {
    await indexed;
  }
  writeBenchWorker(grown);
  await prefixPages(grown, base, ASSETS);
  tellStage('Putting the guide in its place', true);
  await replaceFolder(grown, target);
}

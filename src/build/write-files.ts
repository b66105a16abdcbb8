import { closeSync, fstatSync, openSync } from 'node:fs';
import { join } from 'node:path';
import type { PublishedFile } from '../site/export/published-file.ts';
import { keptTexts } from './cards/kept-texts.ts';
import { giveTurn } from './give-turn.ts';
import type { keptPages } from './kept-pages.ts';
import { inFolder, layFile, linkOrCopy } from './lay-file.ts';
import { holder, pieceWriter } from './piece-writer.ts';
import { openNew } from './write-new.ts';

/** A panel's own, of which there are as many as panels. */
const OF_ONE_PANEL = /^data\/(compare|bench)\/[^/]+\.json$/;

/** Other writers' badges: a dozen and more of each panel. */
const BADGE = /^cards\/[^/]+\/[^/]+\.(svg|html)$/;

/**
 * Writes files into a folder, piece by piece, so that the longest of them is never held as a whole; and each piece at
 * once, since to wait for thousands of small files takes three times as long as to write them. A panel's own are taken
 * from the build before where all that they rest on is as it was.
 *
 * @throws where one can't be written
 */
export async function writeFiles(
  files: Iterable<PublishedFile>,
  folder: string,
  pages?: ReturnType<typeof keptPages>,
): Promise<void> {
  const held = holder();
  const texts = keptTexts();
  for (const { path, text, isOfPanels } of files) {
    const target = join(folder, path);
    if (pages && OF_ONE_PANEL.test(path)) {
      await layFile(pages, `/${path}`, target, async () => Buffer.from([...text()].join('')));
      continue;
    }
    if (pages && BADGE.test(path)) {
      texts.lay(target, [...text()].join(''));
      await giveTurn();
      continue;
    }
    const long = isOfPanels && pages?.longFile(path);
    const file = long ? openNew(long.file) : inFolder(target, () => openSync(target, 'w'));
    try {
      const writer = pieceWriter(file, held);
      for (const piece of text()) {
        if (long) long.put(piece, writer);
        else writer.add(String(piece));
        await giveTurn();
      }
      writer.end();
      if (long) long.end(fstatSync(file));
    } finally {
      closeSync(file);
    }
    if (long) inFolder(target, () => linkOrCopy(long.file, target));
  }
  texts.close();
}

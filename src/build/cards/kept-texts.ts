import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { cacheFolder } from '../../content/read/cache-folder.ts';
import { forgetOld, noteUse } from '../forget-old.ts';
import { inFolder, linkOrCopy } from '../lay-file.ts';
import { keepCard, keptCards } from './kept-cards.ts';

/**
 * Small files of which there are many, as badges are: to begin a file takes twenty times as long as to link it, so that
 * each is kept under what is in it, and laid into the output as a link.
 */
export function keptTexts() {
  const store = join(cacheFolder(), 'badges');
  let kept: Map<string, string> | undefined;
  return {
    /** Lays a file into the output. @throws where it can't be written */
    lay(file: string, text: string): void {
      kept ??= keptCards(store);
      const mark = createHash('sha256').update(text).digest('hex').slice(0, 32);
      const known = kept.get(mark) ?? keepCard(store, mark, file, Buffer.from(text));
      kept.set(mark, known);
      noteUse(known);
      inFolder(file, () => linkOrCopy(known, file));
    },

    /** When all of them are there. */
    close(): void {
      if (kept) forgetOld(store);
    },
  };
}

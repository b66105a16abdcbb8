import { closeSync, mkdirSync, openSync, writeSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { PublishedFile } from '../site/export/published-files.ts';

/**
 * Bytes that are put together before they are written. One buffer serves all files: a new one for each page costs
 * more than what is done with it.
 */
const BATCH = 1 << 20;
/** A character takes at most three bytes of UTF-8 for each unit of the text's length. */
const MOST_BYTES = 3;

/**
 * Writes files into a folder, piece by piece, so that the longest of them is never held as a whole.
 *
 * @throws where one can't be written
 */
export function writeFiles(files: Iterable<PublishedFile>, folder: string): void {
  const batch = Buffer.allocUnsafe(BATCH);
  for (const { path, text } of files) {
    const target = join(folder, path);
    mkdirSync(dirname(target), { recursive: true });
    const file = openSync(target, 'w');
    try {
      let used = 0;
      for (const piece of text()) {
        const most = MOST_BYTES * piece.length;
        if (used + most > BATCH) {
          writeWhole(file, batch.subarray(0, used));
          used = 0;
        }
        if (most > BATCH) writeWhole(file, Buffer.from(piece));
        else used += batch.write(piece, used);
      }
      writeWhole(file, batch.subarray(0, used));
    } finally {
      closeSync(file);
    }
  }
}

/** A single write may take less than it is given. */
function writeWhole(file: number, bytes: Buffer): void {
  for (let done = 0; done < bytes.length; ) done += writeSync(file, bytes, done);
}

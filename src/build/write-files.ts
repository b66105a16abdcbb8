import { closeSync, mkdirSync, openSync, writeSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { PublishedFile } from '../present/published-files.ts';

/** Characters that are put together before they are written. */
const BATCH = 1 << 20;

/**
 * Writes files into a folder, piece by piece, so that the longest of them is never held as a whole.
 *
 * @throws where one can't be written
 */
export function writeFiles(files: readonly PublishedFile[], folder: string): void {
  for (const { path, text } of files) {
    const target = join(folder, path);
    mkdirSync(dirname(target), { recursive: true });
    const file = openSync(target, 'w');
    try {
      let batch = '';
      for (const piece of text()) {
        batch += piece;
        if (batch.length < BATCH) continue;
        writeWhole(file, batch);
        batch = '';
      }
      writeWhole(file, batch);
    } finally {
      closeSync(file);
    }
  }
}

/** A single write may take less than it is given. */
function writeWhole(file: number, text: string): void {
  const bytes = Buffer.from(text);
  for (let done = 0; done < bytes.length; ) done += writeSync(file, bytes, done);
}

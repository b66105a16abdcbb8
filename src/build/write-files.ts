import { closeSync, mkdirSync, openSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import type { PublishedFile } from '../site/export/published-file.ts';
import type { keptPages } from './kept-pages.ts';
import { layFile } from './lay-file.ts';

/** A panel's own, of which there are as many as panels. */
const OF_ONE_PANEL = /^data\/(compare|bench)\/[^/]+\.json$/;

/** After so many pieces others of this process have their turn, such as who feeds the indexer. */
const AT_A_TIME = 20;

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
  const folders = new Set<string>();
  let count = 0;
  for (const { path, text } of files) {
    const target = join(folder, path);
    if (pages && OF_ONE_PANEL.test(path)) {
      await layFile(pages, `/${path}`, target, async () => Buffer.from([...text()].join('')));
      continue;
    }
    if (!folders.has(dirname(target))) mkdirSync(dirname(target), { recursive: true });
    folders.add(dirname(target));
    const file = openSync(target, 'w');
    try {
      for (const piece of inLargePieces(text())) {
        writeFileSync(file, piece);
        if (++count % AT_A_TIME === 0) await setImmediate();
      }
    } finally {
      closeSync(file);
    }
  }
}

/** Letters that go to the disk at one time: a call for each of a panel's small pieces would take longer. */
const AT_ONCE = 1 << 20;

function* inLargePieces(pieces: Iterable<string>): Generator<string> {
  let held: string[] = [];
  let length = 0;
  for (const piece of pieces) {
    held.push(piece);
    length += piece.length;
    if (length < AT_ONCE) continue;
    yield held.join('');
    [held, length] = [[], 0];
  }
  yield held.join('');
}

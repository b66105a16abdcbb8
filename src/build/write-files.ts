import { mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { PublishedFile } from '../site/export/published-file.ts';
import type { keptPages } from './kept-pages.ts';
import { layFile } from './lay-file.ts';

/** A panel's own, of which there are as many as panels. */
const OF_ONE_PANEL = /^data\/(compare|bench)\/[^/]+\.json$/;

/**
 * Writes files into a folder, piece by piece, so that the longest of them is never held as a whole. A panel's own are
 * taken from the build before where all that they rest on is as it was.
 *
 * @throws where one can't be written
 */
export async function writeFiles(
  files: Iterable<PublishedFile>,
  folder: string,
  pages?: ReturnType<typeof keptPages>,
): Promise<void> {
  for (const { path, text } of files) {
    const target = join(folder, path);
    if (pages && OF_ONE_PANEL.test(path)) {
      await layFile(pages, `/${path}`, target, async () => Buffer.from([...text()].join('')));
      continue;
    }
    await mkdir(dirname(target), { recursive: true });
    await writeFile(target, inLargePieces(text()));
  }
}

/** Letters that go to the disk at one time: each piece is waited for, and a panel's is small. */
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

import { mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { PublishedFile } from '../site/export/published-file.ts';

/**
 * Writes files into a folder, piece by piece, so that the longest of them is never held as a whole.
 *
 * @throws where one can't be written
 */
export async function writeFiles(files: Iterable<PublishedFile>, folder: string): Promise<void> {
  for (const { path, text } of files) {
    const target = join(folder, path);
    await mkdir(dirname(target), { recursive: true });
    await writeFile(target, text());
  }
}

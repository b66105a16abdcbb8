import { constants } from 'node:fs';
import { copyFile, mkdir, writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import type { keptPages } from './kept-pages.ts';

/**
 * Lays a page or a data file into the output: a copy of what was kept, which never passes through this process, or what
 * is made now.
 *
 * @param address below the guide's top; of a page with a slash at both ends
 */
export async function layFile(
  pages: ReturnType<typeof keptPages>,
  address: string,
  file: string,
  make: () => Promise<Uint8Array>,
): Promise<void> {
  await mkdir(dirname(file), { recursive: true });
  const kept = pages.keptFile(address);
  if (kept) await copyFile(kept, file, constants.COPYFILE_FICLONE);
  else await writeFile(file, await pages.made(address, make));
}

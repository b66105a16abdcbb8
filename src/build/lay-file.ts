import { constants } from 'node:fs';
import { copyFile, link, mkdir, writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import type { keptPages } from './kept-pages.ts';

/**
 * Lays a page or a data file into the output: a link to what is kept, or where there can be none, as on some disks, a
 * copy.
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
  if (kept) return linkOrCopy(kept, file);
  const made = await pages.made(address, make);
  if (made.file) await linkOrCopy(made.file, file);
  else await writeFile(file, made.bytes);
}

/** Gives a kept file a place in the output: a link, or where there can be none, as on some disks, a copy. */
export async function linkOrCopy(kept: string, file: string): Promise<void> {
  try {
    await link(kept, file);
  } catch {
    await copyFile(kept, file, constants.COPYFILE_FICLONE);
  }
}

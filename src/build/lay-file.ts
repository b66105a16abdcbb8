import { constants, copyFileSync, linkSync, mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { errorCode } from './error-code.ts';
import { giveTurn } from './give-turn.ts';
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
  await giveTurn();
  const kept = pages.keptFile(address);
  if (kept !== undefined) return inFolder(file, () => linkOrCopy(kept, file));
  const made = await pages.made(address, make);
  inFolder(file, () => (made.file ? linkOrCopy(made.file, file) : writeFileSync(file, made.bytes)));
}

/** Gives a kept file a place in the output: a link, or where there can be none, as on some disks, a copy. */
export function linkOrCopy(kept: string, file: string): void {
  try {
    linkSync(kept, file);
  } catch (error) {
    if (errorCode(error) === 'ENOENT') throw error;
    copyFileSync(kept, file, constants.COPYFILE_FICLONE);
  }
}

/**
 * Has a file written, and makes its folder where it is not there: to ask for each of thousands takes longer. At once,
 * since to wait for a small file takes longer than to write it.
 */
export function inFolder<T>(file: string, write: () => T): T {
  try {
    return write();
  } catch (error) {
    if (errorCode(error) !== 'ENOENT') throw error;
    mkdirSync(dirname(file), { recursive: true });
    return write();
  }
}

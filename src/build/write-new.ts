import { closeSync, fstatSync, openSync, rmSync, type Stats } from 'node:fs';
import { errorCode } from './error-code.ts';

/**
 * Opens a file to write it anew: what lies in its place may be a part of the published guide too, and is left to that.
 *
 * @throws where it can't be written
 */
export function openNew(file: string): number {
  try {
    return openSync(file, 'wx');
  } catch (error) {
    if (errorCode(error) !== 'EEXIST') throw error;
    rmSync(file);
    return openSync(file, 'wx');
  }
}

/**
 * Writes such a file.
 *
 * @param write puts it into the file that is open
 * @throws where it can't be written
 */
export function writeNew(file: string, write: (open: number) => void): Stats {
  const open = openNew(file);
  try {
    write(open);
    return fstatSync(open);
  } finally {
    closeSync(open);
  }
}

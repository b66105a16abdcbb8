import { accessSync, constants, statfsSync } from 'node:fs';

/** Where Linux has a disk in memory. */
export const MEMORY = '/dev/shm';

/** Far more than all tests have on it at one time, bytes. */
const ROOM = 4 * 2 ** 30;

/**
 * The folder for temporary files that costs least: tests write and remove thousands of small ones, and a disk takes ten
 * times as long for each. Undefined where memory has no disk, or too little room on it, as in many containers.
 */
export function diskInMemory(): string | undefined {
  try {
    accessSync(MEMORY, constants.W_OK);
    const { bavail, bsize } = statfsSync(MEMORY);
    return bavail * bsize >= ROOM ? MEMORY : undefined;
  } catch {
    return undefined;
  }
}

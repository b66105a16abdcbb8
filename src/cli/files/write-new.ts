import { closeSync, existsSync, mkdirSync, openSync, rmdirSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { errorCode } from '../../build/error-code.ts';
import { outputFault } from '../../build/output-fault.ts';
import { UsageError } from '../../content/read/usage-error.ts';

/**
 * Writes files that are not there yet, all or none: nothing is ever written over, and what was begun when the disk ran
 * full is taken away again, so that the command can be called once more.
 *
 * @param files their texts by their paths below the folder
 * @throws UsageError with those that are there, or why they can't be written
 */
export function writeNew(folder: string, files: ReadonlyMap<string, string>): void {
  refuse([...files.keys()].map((path) => join(folder, path)).filter((it) => existsSync(it)));
  const made: Array<() => void> = [];
  try {
    for (const [path, text] of files) {
      const file = join(folder, path);
      for (const it of newFolders(dirname(file))) made.push(() => rmdirSync(it));
      writeOne(file, text, made);
    }
  } catch (error) {
    for (const undo of made.toReversed()) tryTo(undo);
    if (error instanceof UsageError) throw error;
    throw outputFault(error, [folder], 'Nothing was written.') ?? error;
  }
}

/** The same for one file, by its path. */
export function writeNewFile(file: string, text: string): void {
  writeNew(dirname(file), new Map([[basename(file), text]]));
}

function refuse(there: readonly string[]): void {
  if (there.length === 0) return;
  throw new UsageError(`Nothing was written: ${there.join(', ')} ${there.length === 1 ? 'is' : 'are'} there already.`);
}

/** The folders that had to be made, the outer one first. */
function newFolders(folder: string): string[] {
  const outer = mkdirSync(resolve(folder), { recursive: true });
  const folders: string[] = [];
  for (
    let it = resolve(folder);
    outer !== undefined && it.length >= outer.length && it !== dirname(it);
    it = dirname(it)
  ) {
    folders.unshift(it);
  }
  return folders;
}

function writeOne(file: string, text: string, made: Array<() => void>): void {
  let handle: number;
  try {
    // Fails rather than write over what has come since.
    handle = openSync(file, 'wx');
  } catch (error) {
    if (errorCode(error) === 'EEXIST') refuse([file]);
    throw error;
  }
  made.push(() => rmSync(file));
  try {
    writeFileSync(handle, text);
  } finally {
    closeSync(handle);
  }
}

function tryTo(undo: () => void): void {
  try {
    undo();
  } catch {
    // Somebody has put something into the folder meanwhile, or taken it away: it is theirs.
  }
}

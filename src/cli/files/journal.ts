import {
  chmodSync,
  chownSync,
  closeSync,
  copyFileSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmdirSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { z } from 'zod';
import { errorCode } from '../../build/error-code.ts';
import { UsageError } from '../../content/read/usage-error.ts';
import { type Changes, isCopy, type NewContent, stamp, stampOf } from './changes.ts';

/** Where a command keeps its lock and what it is about to put in place; gone when nothing is at work. */
export const stateFolder = (folder: string) => join(folder, '.edits');

const JOURNAL = 'journal.json';

const journalSchema = z.object({
  moves: z.array(z.object({ from: z.string(), to: z.string() })).readonly(),
  files: z.array(
    z.object({
      path: z.string(),
      /** Name of the new file's text beside the journal; null for a file that goes. */
      staged: z.string().nullable(),
      before: z.string().nullable(),
      after: z.string().nullable(),
    }),
  ),
});
type Journal = z.output<typeof journalSchema>;

/**
 * Writes down what is to be done, all of it, before any of it is done: the new files beside the journal, and then the
 * journal, in one step. From that step on the changes count as made; whoever finds a journal finishes it.
 */
export function writeJournal(folder: string, { moves = [], files }: Changes): void {
  const state = stateFolder(folder);
  mkdirSync(state, { recursive: true });
  const entries = files.map(({ path, before, after }, i): Journal['files'][number] => {
    const staged = after === undefined ? null : `${i}.new`;
    if (staged !== null && after !== undefined) writeThrough(join(state, staged), after);
    return {
      path,
      staged,
      before: before === undefined ? null : stamp(before),
      after: after === undefined ? null : stamp(after),
    };
  });
  const draft = join(state, `${JOURNAL}.draft`);
  writeThrough(draft, JSON.stringify({ moves, files: entries } satisfies Journal));
  syncFolder(state);
  renameSync(draft, join(state, JOURNAL));
  syncFolder(state);
}

/** True where changes have been decided on and are not all in place. */
export const hasJournal = (folder: string) => existsSync(join(stateFolder(folder), JOURNAL));

/**
 * Puts in place what the journal says and is not in place yet, and takes it away. Whatever somebody has changed since is
 * left as they have it.
 *
 * @returns files that were left
 */
export function finishJournal(folder: string): string[] {
  const state = stateFolder(folder);
  const { moves, files } = journalSchema.parse(JSON.parse(readFileSync(join(state, JOURNAL), 'utf8')));
  for (const { from, to } of moves) {
    if (!existsSync(join(folder, from)) || existsSync(join(folder, to))) continue;
    mkdirSync(dirname(join(folder, to)), { recursive: true });
    renameSync(join(folder, from), join(folder, to));
    syncFolder(dirname(join(folder, to)));
  }
  const left = files.filter((file) => !putInPlace(folder, file)).map(({ path }) => path);
  rmSync(join(state, JOURNAL));
  clear(folder);
  return left;
}

/** Takes away what is left of changes that were never decided on, and the folder of the state if it is empty then. */
export function clear(folder: string): void {
  const state = stateFolder(folder);
  if (!existsSync(state)) return;
  for (const name of readdirSync(state)) {
    if (name !== 'lock') rmSync(join(state, name), { force: true });
  }
}

/** Takes the folder of the state away, unless somebody is in it. */
export function removeState(folder: string): void {
  try {
    rmdirSync(stateFolder(folder));
  } catch (error) {
    if (!['ENOTEMPTY', 'EEXIST', 'ENOENT'].includes(errorCode(error) ?? '')) throw error;
  }
}

/** @returns false where the file is neither as it was nor as it should be */
function putInPlace(folder: string, { path, staged, before, after }: Journal['files'][number]): boolean {
  const named = join(folder, path);
  const found = stampOf(named);
  if (found === after) return true;
  if (found !== before) return false;
  if (staged === null) {
    rmSync(named);
    syncFolder(dirname(named));
    return true;
  }
  const source = join(stateFolder(folder), staged);
  // What a link leads to is changed, not the link.
  const target = found === null ? named : realpathSync(named);
  if (found !== null) likeOf(source, target);
  mkdirSync(dirname(target), { recursive: true });
  try {
    renameSync(source, target);
  } catch (error) {
    if (errorCode(error) !== 'EXDEV') throw error;
    // Behind a link to another disk: beside the file there, and then in one step as well.
    const beside = join(dirname(target), `.${path.split('/').at(-1)}.new`);
    copyFileSync(source, beside);
    likeOf(beside, target);
    syncFile(beside);
    renameSync(beside, target);
  }
  syncFolder(dirname(target));
  return true;
}

/** Gives a file the rights and, where this user may, the owner of another. */
function likeOf(file: string, other: string): void {
  const { mode, uid, gid } = statSync(other);
  chmodSync(file, mode);
  try {
    chownSync(file, uid, gid);
  } catch (error) {
    if (errorCode(error) !== 'EPERM') throw error;
  }
}

/** @throws UsageError where the file that is to be copied is no longer as it was */
function writeThrough(file: string, content: NewContent): void {
  if (!isCopy(content)) writeFileSync(file, content);
  else {
    // With the rights of a file that is written here, not with those of a memory card.
    writeFileSync(file, '');
    const { mode } = statSync(file);
    copyFileSync(content.copyOf, file);
    chmodSync(file, mode);
    if (stampOf(file) !== content.sha256)
      throw new UsageError(
        `${content.copyOf} was changed in the meantime. Nothing was changed; run the command again.`,
      );
  }
  syncFile(file);
}

function syncFile(file: string): void {
  const handle = openSync(file, 'r+');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

/** A name that was given or taken is on the disk. Some systems do not open folders; they keep names by themselves. */
function syncFolder(folder: string): void {
  let handle: number;
  try {
    handle = openSync(folder, 'r');
  } catch {
    return;
  }
  try {
    fsyncSync(handle);
  } catch (error) {
    if (!['EINVAL', 'EPERM', 'EISDIR'].includes(errorCode(error) ?? '')) throw error;
  } finally {
    closeSync(handle);
  }
}

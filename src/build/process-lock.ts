import { linkSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { z } from 'zod';
import { UsageError } from '../content/read/usage-error.ts';
import { errorCode } from './error-code.ts';

/** Who is at work: a process of a machine. Its start tells it from a later process that was given the same number. */
const ownerSchema = z.object({ pid: z.int().positive(), host: z.string(), start: z.string() });
type Owner = z.output<typeof ownerSchema>;

/** Somebody else is at work in a folder. */
export class LockedError extends UsageError {}

/** What to tell who is refused: of the process that has the lock, and where the lock lies. */
export type Refusal = (owner: Readonly<Owner>, lock: string) => string;

/**
 * Lets one process at a time into a folder. The lock is a file that names its owner. One whose owner has ended, however
 * it ended, is stale and gives way; a process that has the lock already keeps it. It is given back by `releaseLock`, or
 * when the process exits.
 *
 * @param folder in which the lock lies; made where it is not there
 * @throws LockedError where another process has it
 */
export function takeLock(folder: string, refusal: Refusal): void {
  const lock = join(folder, 'lock');
  const draft = join(folder, `lock.${process.pid}`);
  mkdirSync(folder, { recursive: true });
  writeFileSync(draft, JSON.stringify({ pid: process.pid, host: hostname(), start: startOf(process.pid) }));
  try {
    // Each turn ends with the lock, with a refusal, or with a stale lock less.
    for (;;) {
      try {
        // A link is there with all of its content, or not at all.
        linkSync(draft, lock);
        break;
      } catch (error) {
        if (errorCode(error) !== 'EEXIST') throw error;
      }
      const found = contentOf(lock);
      if (found === undefined) continue;
      const owner = ownerIn(found);
      if (owner && isSelf(owner)) return;
      if (owner && isAtWork(owner)) throw new LockedError(refusal(owner, lock));
      setAside(lock, found);
    }
  } finally {
    rmSync(draft, { force: true });
  }
  if (!isWatched) {
    isWatched = true;
    process.once('exit', () => held.forEach(releaseLock));
  }
  held.add(folder);
}

/** Folders that this process has the lock of. */
const held = new Set<string>();
let isWatched = false;

/** Gives the lock back, if this process has it. */
export function releaseLock(folder: string): void {
  const lock = join(folder, 'lock');
  const owner = ownerIn(contentOf(lock));
  held.delete(folder);
  if (owner && isSelf(owner)) rmSync(lock, { force: true });
}

/** Takes a stale lock away. Of several processes that find it, one renames it; what is not that lock is put back. */
function setAside(lock: string, stale: string): void {
  const aside = `${lock}.${process.pid}.stale`;
  try {
    renameSync(lock, aside);
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return;
    throw error;
  }
  if (contentOf(aside) !== stale) linkSync(aside, lock);
  rmSync(aside);
}

function isSelf(owner: Owner): boolean {
  return owner.pid === process.pid && owner.host === hostname() && owner.start === startOf(process.pid);
}

/** Another machine's processes can't be seen from here, and count as at work. */
function isAtWork({ pid, host, start }: Owner): boolean {
  if (host !== hostname()) return true;
  try {
    process.kill(pid, 0);
  } catch (error) {
    // Anything but "no such process" is a process, if somebody else's.
    if (errorCode(error) === 'ESRCH') return false;
  }
  return startOf(pid) === start;
}

/** When a process started, in the system's own count; empty where the system does not say. */
function startOf(pid: number): string {
  // Its name, in brackets, may hold spaces; the start is the 20th field after it.
  return contentOf(`/proc/${pid}/stat`)?.replace(/^.*\)/s, '').trim().split(' ')[19] ?? '';
}

function ownerIn(content: string | undefined): Owner | undefined {
  try {
    return ownerSchema.parse(JSON.parse(content ?? ''));
  } catch {
    // Cut off in the middle, or no lock of ours: nobody can be asked whether it still holds.
    return undefined;
  }
}

function contentOf(file: string): string | undefined {
  try {
    return readFileSync(file, 'utf8');
  } catch (error) {
    if (['ENOENT', 'ESRCH'].includes(errorCode(error) ?? '')) return undefined;
    throw error;
  }
}

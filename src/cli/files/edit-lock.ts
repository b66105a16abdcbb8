import { hostname } from 'node:os';
import { setTimeout as sleep } from 'node:timers/promises';
import { errorCode } from '../../build/error-code.ts';
import { LockedError, type Refusal, releaseLock, takeLock } from '../../build/process-lock.ts';
import { clear, finishJournal, hasJournal, removeState, stateFolder } from './journal.ts';

/** An edit holds the lock for the time that a check of the content takes, a few seconds for a thousand panels. */
const PATIENCE_MS = 30_000;
const TURN_MS = 25;

/**
 * Does work in a content folder while no other command edits there; waits for one that does. What a command that was
 * killed has left half done is finished first.
 *
 * @param work may not wait for anything: in one process, too, two edits must not mix
 * @throws LockedError where another command edits for half a minute
 */
export async function whileLocked<T>(folder: string, work: () => T): Promise<T> {
  const state = stateFolder(folder);
  const until = Date.now() + PATIENCE_MS;
  for (;;) {
    try {
      takeLock(state, refusal);
      break;
    } catch (error) {
      // The folder goes with the lock of the one before; what lies in it is then made anew.
      const isGone = errorCode(error) === 'ENOENT';
      if ((!isGone && !(error instanceof LockedError)) || Date.now() > until) throw error;
      await sleep(TURN_MS);
    }
  }
  try {
    if (hasJournal(folder)) tellFinished(finishJournal(folder));
    else clear(folder);
    return work();
  } finally {
    releaseLock(state);
    removeState(folder);
  }
}

/**
 * Finishes what a command that was killed has left half done, so that nobody reads content of which one file is new and
 * another old.
 */
export async function finishCutShort(folder: string): Promise<void> {
  if (hasJournal(folder)) await whileLocked(folder, () => undefined);
}

function tellFinished(left: readonly string[]): void {
  console.error('An earlier command was cut short; what it was about to write is in place now.');
  for (const path of left) console.error(`Left as it is, since it was changed in the meantime: ${path}`);
}

const refusal: Refusal = ({ pid, host }, lock) =>
  host === hostname()
    ? `Another command edits the content (process ${pid}); nothing was changed. Start again when it has ended.`
    : `Another command edits the content (process ${pid} on ${host}); nothing was changed. If it does not, delete ${lock}.`;

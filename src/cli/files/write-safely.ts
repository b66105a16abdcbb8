import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { outputFault } from '../../build/output-fault.ts';
import { UsageError } from '../../content/read/usage-error.ts';
import { type Changes, stamp, stampOf } from './changes.ts';
import { refuseProblems } from './check-changes.ts';
import { whileLocked } from './edit-lock.ts';
import { finishJournal, writeJournal } from './journal.ts';

/** A file is no longer as it was when the changes were worked out; they have to be worked out again. */
export class ChangedMeanwhile extends UsageError {}

/**
 * Makes changes in a content folder, all or none, so that nothing is lost whatever happens:
 *
 * - content that the check refuses is not written, unless it is refused for the same reason already;
 * - files that have changed since they were read are not written over, and commands edit one after another;
 * - every file is as it was or as it should be, at any moment and after any end of the process, with the same rights.
 *   Of several files, those that were not put in place yet are when the next command starts (`journal.ts`).
 *
 * @param folder the content folder
 * @param today `YYYY-MM-DD`, for the check
 * @throws ContentError with the problems that the changes would bring
 * @throws ChangedMeanwhile where a file is not as it was
 * @throws UsageError where the folder can't be written
 */
export async function writeSafely(folder: string, changes: Changes, today: string): Promise<void> {
  try {
    await whileLocked(folder, () => {
      ensureUnchanged(folder, changes);
      refuseProblems(folder, changes, today);
      // The check takes a while, in which a hand may save a file.
      ensureUnchanged(folder, changes);
      writeJournal(folder, changes);
      const [left] = finishJournal(folder);
      if (left) throw changedMeanwhile(left);
    });
  } catch (error) {
    throw outputFault(error, [folder], 'Nothing was changed.') ?? error;
  }
}

function ensureUnchanged(folder: string, { moves = [], files }: Changes): void {
  for (const { to } of moves) {
    if (existsSync(join(folder, to)))
      throw new UsageError(`${join(folder, to)} is there already; nothing was changed.`);
  }
  for (const { path, before } of files) {
    const move = moves.find(({ to }) => path === to || path.startsWith(`${to}/`));
    const now = move ? `${move.from}${path.slice(move.to.length)}` : path;
    const wanted = before === undefined ? null : stamp(before);
    if (stampOf(join(folder, now)) !== wanted) throw changedMeanwhile(now);
  }
}

const changedMeanwhile = (path: string) =>
  new ChangedMeanwhile(`${path} was changed in the meantime, and was left as it is. Run the command again.`);

/** The run that lies open: what is shown of it is on the disk. No DOM. */
import type { KeptRun } from '../kept-run.ts';
import { type Act, type Run, type RunLog, runOf } from '../run.ts';

export interface Desk {
  /** As it is on the disk. */
  log(): RunLog;
  run(): Run;
  /** Does one thing or several; resolves when they are on the disk, rejects where they could not be written. */
  perform(...acts: readonly Act[]): Promise<void>;
  undo(): Promise<void>;
  redo(): Promise<void>;
  close(): void;
}

/**
 * Opens a run.
 *
 * @param changed is called after each change, this window's or another one's
 */
export function openDesk(kept: KeptRun, changed: () => void): Desk {
  let worked = { log: kept.log, run: runOf(kept.log) };
  const current = () => {
    if (worked.log !== kept.log) worked = { log: kept.log, run: runOf(kept.log) };
    return worked;
  };
  const written = async (writing: ReadonlyArray<Promise<RunLog>>) => {
    await Promise.all(writing);
    changed();
  };
  const endOther = kept.onOther(changed);
  return {
    log: () => current().log,
    run: () => current().run,
    perform: (...acts) => written(acts.map((it) => kept.act(it))),
    undo: () => written([kept.undo()]),
    redo: () => written([kept.redo()]),
    close: () => {
      endOther();
      kept.close();
    },
  };
}

/** A run that is open in this window: what is done to it is on the disk before anybody sees it. */
import { type BenchStore, BenchStoreError, type Step, stepped } from './bench-store.ts';
import { type Act, type RunLog, runOf } from './run.ts';

export interface KeptRun {
  /** As it is on the disk. */
  readonly log: RunLog;
  /**
   * Does something, and gives the log back once the disk has it: show nothing before. Calls that don't wait for each
   * other are done in their order. What another window has written meanwhile is taken in first.
   *
   * @throws BenchStoreError `behind` where the other window has changed what the act is about; the log has its changes then
   */
  act(act: Act): Promise<RunLog>;
  /** @throws BenchStoreError `behind` where another window has written meanwhile: what would be undone is not what was seen */
  undo(): Promise<RunLog>;
  /** @throws BenchStoreError `behind`, as with `undo` */
  redo(): Promise<RunLog>;
  /** Takes in what other windows have written, and is done by itself when they tell of it. */
  catchUp(): Promise<RunLog>;
  /** Tells of every change that came from another window; gives back what ends it. */
  onOther(told: (log: RunLog) => void): () => void;
  close(): void;
}

/**
 * Opens a run of the store.
 *
 * @throws BenchStoreError `gone` where there is none of that id
 */
export async function openRun(store: BenchStore, id: string): Promise<KeptRun> {
  const load = async () => {
    const found = await store.load(id);
    if (!found) throw new BenchStoreError('gone');
    return found;
  };
  let state = await load();
  const others = new Set<(log: RunLog) => void>();
  let last: Promise<unknown> = Promise.resolve();
  /** How often another window’s changes were taken in. */
  let takenIn = 0;

  /** One after another, whatever became of the one before. */
  function inTurn(work: () => Promise<void>): Promise<RunLog> {
    const mine = last.then(work, work).then(() => state.log);
    last = mine.catch(() => undefined);
    return mine;
  }
  function take(stored: typeof state): void {
    if (stored.at === state.at) return;
    state = stored;
    takenIn++;
    for (const it of others) it(state.log);
  }
  function add(step: Step): Promise<RunLog> {
    const [seen, whenSeen] = [state.log, takenIn];
    return inTurn(async () => {
      for (;;) {
        if (takenIn !== whenSeen && !isStillMeant(step, seen, state.log)) throw new BenchStoreError('behind');
        const done = await store.append(id, state.at, [step]);
        if (done.kind === 'kept') {
          state = { log: stepped(state.log, step), at: done.at };
          return;
        }
        take(done.stored);
      }
    });
  }
  const catchUp = () => inTurn(async () => take(await load()));
  const end = store.onChange((run) => {
    // A run that was removed says so at the next act.
    if (run === id) catchUp().catch(() => undefined);
  });

  return {
    get log() {
      return state.log;
    },
    act: (act) => add({ kind: 'do', act }),
    undo: () => add({ kind: 'undo' }),
    redo: () => add({ kind: 'redo' }),
    catchUp,
    onOther: (told) => {
      others.add(told);
      return () => others.delete(told);
    },
    close: () => {
      others.clear();
      end();
    },
  };
}

/** Whether a step means after another window's changes what it meant before. */
function isStillMeant(step: Step, before: RunLog, now: RunLog): boolean {
  if (step.kind !== 'do') return false;
  if (!('id' in step.act)) return true;
  const { id } = step.act;
  const entry = (log: RunLog) => JSON.stringify(runOf(log).entries.find((it) => it.id === id));
  return entry(before) === entry(now);
}

/**
 * Runs on this device, in the browser's database. A run is kept as the steps that made it, each a record of its own
 * with a number, so that a write never touches what was written before, and two windows lose nothing to each other.
 */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import { type Act, doAct, newLog, type Run, type RunLog, redo, undo } from './run.ts';

/** One thing done to a log. */
export type Step =
  | { readonly kind: 'do'; readonly act: Act }
  | { readonly kind: 'undo' }
  /** Of what was undone last. */
  | { readonly kind: 'redo' };

/** A run as it lies in the store. */
export interface StoredRun {
  readonly log: RunLog;
  /** Number of its last step; 0 where there is none. `append` asks for it. */
  readonly at: number;
}

/** What a list of runs tells of one. */
export interface RunSummary {
  readonly id: string;
  readonly start: Run;
  /** When it was begun, and when its last step was written: ISO 8601. */
  readonly begun: string;
  readonly changed: string;
}

/** A picture beside a run. */
export interface StoredPhoto {
  readonly file: string;
  readonly picture: Blob;
}

/** What became of steps that were to be added. */
export type Appended =
  | { readonly kind: 'kept'; readonly at: number }
  /** Another window has written meanwhile: nothing was added. The run as it is now. */
  | { readonly kind: 'behind'; readonly stored: StoredRun };

/**
 * Why the store did not do what was asked:
 * `not-there` the browser keeps nothing here (a private window, or it was forbidden), `full` no room is left,
 * `newer` a newer version of the pad has been at the data, `closed` the browser or another window closed the database:
 * load the page again, `gone` the run was removed in another window, `behind` another window changed what this one was
 * about to, `taken` there is a run or picture of that name.
 */
export type StoreFault = 'not-there' | 'full' | 'newer' | 'closed' | 'gone' | 'behind' | 'taken';

export class BenchStoreError extends Error {
  readonly fault: StoreFault;
  constructor(fault: StoreFault, cause?: unknown) {
    super(`bench store: ${fault}`, { cause });
    this.fault = fault;
  }
}

export interface BenchStore {
  /**
   * Takes in a run, with all that was done to it; resolves when it is on the disk.
   *
   * @throws BenchStoreError `taken` where there is one of its id
   */
  begin(log: RunLog): Promise<StoredRun>;
  /**
   * Adds steps, all or none; resolves when they are on the disk and not before.
   *
   * @param after number of the last step that is known here
   */
  append(run: string, after: number, steps: readonly Step[]): Promise<Appended>;
  load(run: string): Promise<StoredRun | undefined>;
  /** All runs, the one that was changed last first. */
  list(): Promise<RunSummary[]>;
  /** Takes a run away with its pictures: there is no way back. */
  remove(run: string): Promise<void>;
  /** Keeps a picture; resolves when it is on the disk. */
  savePhoto(run: string, file: string, picture: Blob): Promise<void>;
  photos(run: string): Promise<StoredPhoto[]>;
  /** Something besides runs, by name: a chosen folder, the settings of a meter. */
  keep(name: string, value: unknown): Promise<void>;
  kept(name: string): Promise<unknown>;
  /** Tells of runs that another window has changed or removed; gives back what ends it. */
  onChange(told: (run: string) => void): () => void;
  close(): void;
}

interface BenchDatabase extends DBSchema {
  runs: { key: string; value: RunSummary };
  /** Keyed by run and number. */
  steps: { key: [string, number]; value: Step & { readonly run: string; readonly number: number } };
  photos: { key: [string, string]; value: StoredPhoto & { readonly run: string } };
  kept: { key: string; value: unknown };
}

const CHANNEL = 'panel-ledger-bench';
const VERSION = 1;
/** A write counts once the disk has it, not once the system has promised to write it. */
const STRICT = { durability: 'strict' } as const;

/**
 * Opens the store.
 *
 * @param name of the database; there is one a site
 * @param now the time, as ISO 8601
 * @throws BenchStoreError `not-there` or `newer`
 */
export async function openBenchStore(
  name = 'panel-ledger-bench',
  now = () => new Date().toISOString(),
): Promise<BenchStore> {
  const database = await opened(name);
  const channel = new BroadcastChannel(`${CHANNEL}:${name}`);
  const tell = (run: string) => channel.postMessage(run);
  return {
    begin: (log) =>
      told(async () => {
        const { id } = log.start;
        const steps = stepsOf(log);
        const at = now();
        const change = database.transaction(['runs', 'steps'], 'readwrite', STRICT);
        const runs = change.objectStore('runs');
        if (await runs.getKey(id)) {
          change.abort();
          await change.done.catch(() => undefined);
          throw new BenchStoreError('taken');
        }
        await Promise.all([
          runs.add({ id, start: log.start, begun: at, changed: at }, id),
          ...steps.map((it, i) => change.objectStore('steps').add({ ...it, run: id, number: i + 1 }, [id, i + 1])),
          change.done,
        ]);
        tell(id);
        return { log, at: steps.length };
      }),
    append: (id, after, steps) =>
      told(async () => {
        const change = database.transaction(['runs', 'steps'], 'readwrite', STRICT);
        const [runs, all] = [change.objectStore('runs'), change.objectStore('steps')];
        const [run, last] = await Promise.all([runs.get(id), all.openKeyCursor(stepsIn(id), 'prev')]);
        const at = last?.key[1] ?? 0;
        if (!run || at !== after) {
          const stored = run && replayed(run.start, await all.getAll(stepsIn(id)));
          await change.done;
          if (!stored) throw new BenchStoreError('gone');
          return { kind: 'behind', stored };
        }
        await Promise.all([
          ...steps.map((it, i) => all.add({ ...it, run: id, number: at + i + 1 }, [id, at + i + 1])),
          runs.put({ ...run, changed: now() }, id),
          change.done,
        ]);
        tell(id);
        return { kind: 'kept', at: at + steps.length };
      }),
    load: (id) =>
      told(async () => {
        const look = database.transaction(['runs', 'steps']);
        const run = await look.objectStore('runs').get(id);
        return run && replayed(run.start, await look.objectStore('steps').getAll(stepsIn(id)));
      }),
    list: () =>
      told(async () => (await database.getAll('runs')).toSorted((a, b) => b.changed.localeCompare(a.changed))),
    remove: (id) =>
      told(async () => {
        const change = database.transaction(['runs', 'steps', 'photos'], 'readwrite', STRICT);
        await Promise.all([
          change.objectStore('runs').delete(id),
          change.objectStore('steps').delete(stepsIn(id)),
          change.objectStore('photos').delete(photosIn(id)),
          change.done,
        ]);
        tell(id);
      }),
    savePhoto: (run, file, picture) =>
      told(async () => {
        const change = database.transaction(['runs', 'photos'], 'readwrite', STRICT);
        const photos = change.objectStore('photos');
        const [isThere, before] = await Promise.all([
          change.objectStore('runs').getKey(run),
          photos.getKey([run, file]),
        ]);
        if (!isThere || before) {
          await change.done;
          throw new BenchStoreError(isThere ? 'taken' : 'gone');
        }
        await Promise.all([photos.add({ run, file, picture }, [run, file]), change.done]);
      }),
    photos: (run) =>
      told(async () =>
        (await database.getAll('photos', photosIn(run))).map(({ file, picture }) => ({ file, picture })),
      ),
    keep: (key, value) =>
      told(async () => {
        const change = database.transaction('kept', 'readwrite', STRICT);
        await Promise.all([change.store.put(value, key), change.done]);
      }),
    kept: (key) => told(() => database.get('kept', key)),
    onChange: (heard) => {
      const listen = ({ data }: MessageEvent) => heard(String(data));
      channel.addEventListener('message', listen);
      return () => channel.removeEventListener('message', listen);
    },
    close: () => {
      channel.close();
      database.close();
    },
  };
}

/**
 * Asks the browser never to clear the store by itself when the disk fills; to be called from a press, since some browsers
 * ask the tester. The store works without it.
 *
 * @returns whether it is so
 */
export async function keepForGood(): Promise<boolean> {
  try {
    return (await navigator.storage.persisted()) || (await navigator.storage.persist());
  } catch {
    return false;
  }
}

const stepsIn = (run: string) => IDBKeyRange.bound([run, 0], [run, Number.POSITIVE_INFINITY]);
/** Arrays come after all texts. */
const photosIn = (run: string) => IDBKeyRange.bound([run, ''], [run, []]);

async function opened(name: string): Promise<IDBPDatabase<BenchDatabase>> {
  try {
    const database: IDBPDatabase<BenchDatabase> = await openDB<BenchDatabase>(name, VERSION, {
      upgrade: (fresh) => {
        for (const it of ['runs', 'steps', 'photos', 'kept'] as const) fresh.createObjectStore(it);
      },
      // A newer version of the pad in another window waits for this one to let go.
      blocking: () => database.close(),
    });
    return database;
  } catch (error) {
    throw new BenchStoreError(nameOf(error) === 'VersionError' ? 'newer' : 'not-there', error);
  }
}

const nameOf = (error: unknown) => (error instanceof Error || error instanceof DOMException ? error.name : '');

/** What a step of the store comes to, with faults of the database put into our terms. */
async function told<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof BenchStoreError) throw error;
    const faults: Record<string, StoreFault> = {
      QuotaExceededError: 'full',
      InvalidStateError: 'closed',
      AbortError: 'closed',
    };
    const fault = faults[nameOf(error)];
    throw fault ? new BenchStoreError(fault, error) : error;
  }
}

/** A log after one more step. */
export function stepped(log: RunLog, step: Step): RunLog {
  switch (step.kind) {
    case 'do':
      return doAct(log, step.act);
    case 'undo':
      return undo(log);
    case 'redo':
      return redo(log);
  }
}

function replayed(start: Run, steps: readonly (Step & { readonly number: number })[]): StoredRun {
  return { log: steps.reduce<RunLog>(stepped, newLog(start)), at: steps.at(-1)?.number ?? 0 };
}

/** Steps that make a log as it is, with what was undone in it. */
export function stepsOf({ acts, undone }: RunLog): Step[] {
  return [
    ...[...acts, ...undone.toReversed()].map((act) => ({ kind: 'do', act }) as const),
    ...undone.map(() => ({ kind: 'undo' }) as const),
  ];
}

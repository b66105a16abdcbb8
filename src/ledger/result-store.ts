import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import { cacheFolder } from '../content/read/cache-folder.ts';
import { writeWhole } from '../content/read/write-whole.ts';

/**
 * Results that earlier commands worked out, by a hash of what went in. A result is the same whether it comes from here or
 * not.
 *
 * A store's file carries a hash of the calculation's own source, and is left aside when that has changed. Every result in
 * it stands by itself, so that those of other folders and days are not read for this one.
 */
export interface ResultStore<T> {
  /** What is known by a name. */
  get(key: string): T | undefined;
  /** Has something known from now on, and kept by `keepResults`. */
  set(key: string, result: T): void;
}

/** Results that a file keeps besides those of the last command: other folders' and other days'. */
const MOST_OLD = 2000;

interface Opened {
  /** Undefined where the source can't be read, so that nothing may be kept. */
  calculation: string | undefined;
  /** Bytes of each result of the file. */
  old: Map<string, Uint8Array>;
  /** Those asked for in this process. */
  used: Map<string, unknown>;
  isChanged: boolean;
}

/** On the global object, as the ledger is: the build and its pages are two copies of this module. By the store's name. */
const shared = globalThis as { panelLedgerResults?: Map<string, Opened>; panelLedgerResultsAnew?: boolean };

/**
 * The store of one kind of results. It is opened when it is first asked.
 *
 * @param name its file's
 * @param calculation stands for the source that they follow from
 */
export function resultStore<T>(name: string, calculation: () => string | undefined): ResultStore<T> {
  const opened = (): Opened => {
    shared.panelLedgerResults ??= new Map();
    const before = shared.panelLedgerResults.get(name);
    if (before) return before;
    const store = open(name, shared.panelLedgerResultsAnew ? undefined : calculation());
    shared.panelLedgerResults.set(name, store);
    return store;
  };
  return {
    get(key) {
      const { used, old } = opened();
      if (used.has(key)) return used.get(key) as T;
      const bytes = old.get(key);
      if (bytes === undefined) return undefined;
      const result = deserialize(bytes) as T;
      used.set(key, result);
      return result;
    },
    set(key, result) {
      const store = opened();
      store.used.set(key, result);
      store.isChanged = true;
    },
  };
}

/**
 * A name that follows from the values of an input alone. What `serialize` makes of a number depends on how the engine holds
 * it, which depends on what has run before: the same input would have one name in this build and another in the next.
 */
export const keyOf = (input: unknown): string =>
  createHash('sha256').update(JSON.stringify(input, inFull)).digest('base64url');

/** JSON knows no infinite number and no signed zero, and would say `{}` of what has no fields. */
function inFull(_key: string, it: unknown): unknown {
  if (typeof it === 'number')
    return Number.isFinite(it) && !Object.is(it, -0) ? it : `number ${Object.is(it, -0) ? '-0' : it}`;
  if (it instanceof Map || it instanceof Set || ArrayBuffer.isView(it)) throw new Error('an input that has no name');
  return it;
}

/** Keeps what was worked out for the next command; a folder that can't be written to is no reason to fail. */
export function keepResults(): void {
  for (const [name, store] of shared.panelLedgerResults ?? []) keep(name, store);
}

/** Lets go of all results, which a process that works out no further ledger has no use for. */
export function releaseResults(): void {
  delete shared.panelLedgerResults;
  delete shared.panelLedgerResultsAnew;
}

/** Leaves aside what earlier commands have worked out: for measuring how long it takes, and for tests. */
export function forgetResults(): void {
  delete shared.panelLedgerResults;
  shared.panelLedgerResultsAnew = true;
}

const fileOf = (name: string) => join(cacheFolder(), name);

const open = (name: string, calculation: string | undefined): Opened => ({
  calculation,
  old: storedResults(name, calculation),
  used: new Map(),
  isChanged: false,
});

function keep(name: string, store: Opened): void {
  if (!store.isChanged || store.calculation === undefined) return;
  store.isChanged = false;
  const used = [...store.used].map(([key, it]) => [key, store.old.get(key) ?? serialize(it)] as const);
  const old = [...store.old].filter(([key]) => !store.used.has(key)).slice(0, MOST_OLD);
  const results = [...used, ...old];
  const lengths = new Map(results.map(([key, it]) => [key, it.length]));
  const head = serialize({ calculation: store.calculation, lengths } satisfies Head);
  const start = Buffer.alloc(HEAD_LENGTH_BYTES);
  start.writeUInt32LE(head.length);
  try {
    writeWhole(fileOf(name), Buffer.concat([start, head, ...results.map(([, it]) => it)]));
  } catch {
    // The next command works it out again.
  }
}

/** What a file of results begins with, after its own length; the results follow in the same order. */
interface Head {
  calculation: string;
  /** Bytes of each result, by its key. */
  lengths: ReadonlyMap<string, number>;
}

const HEAD_LENGTH_BYTES = 4;

function storedResults(name: string, calculation: string | undefined): Map<string, Uint8Array> {
  if (calculation === undefined) return new Map();
  try {
    const bytes = readFileSync(fileOf(name));
    let place = HEAD_LENGTH_BYTES + bytes.readUInt32LE();
    const head: unknown = deserialize(bytes.subarray(HEAD_LENGTH_BYTES, place));
    if (!isHead(head) || head.calculation !== calculation) return new Map();
    const results = new Map<string, Uint8Array>();
    for (const [key, length] of head.lengths) {
      results.set(key, bytes.subarray(place, place + length));
      place += length;
    }
    return place === bytes.length ? results : new Map();
  } catch {
    // There is no such file yet, or another version of Node wrote it.
    return new Map();
  }
}

function isHead(it: unknown): it is Head {
  return typeof it === 'object' && it !== null && 'calculation' in it && 'lengths' in it && it.lengths instanceof Map;
}

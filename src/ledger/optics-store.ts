import { createHash } from 'node:crypto';
import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import { cacheFolder } from '../content/read/cache-folder.ts';
import { productFolder } from '../content/read/product-folder.ts';
import { writeWhole } from '../content/read/write-whole.ts';
import { estimatePanel } from '../measure/beam/estimate.ts';
import type { OpticsInput } from '../measure/beam/optics-input.ts';
import { type PackedResult, packResult } from './optics-pack.ts';
import { estimateInThreads } from './optics-threads.ts';

/**
 * Results of the optics model that earlier builds worked out, by a hash of what went in: a panel that was not measured
 * again has the same light, and a build that only changes prices need not fit a thousand beams. A result is the same
 * whether it comes from here or not.
 *
 * The file carries a hash of the calculation's own source, and is left aside when that has changed. Every result in it
 * stands by itself, so that those of other folders and days are not read for this one.
 */
const storeFile = () => join(cacheFolder(), 'optics');

/** Results that the file keeps besides those of the last build: other folders' and other days'. */
const MOST_OLD = 2000;

interface Store {
  /** Undefined where the source can't be read, so that nothing may be kept. */
  calculation: string | undefined;
  /** Bytes of each result of the file. */
  old: Map<string, Uint8Array>;
  /** Those asked for in this process. */
  used: Map<string, PackedResult>;
  isChanged: boolean;
}

/** On the global object, as the ledger is: the build and its pages are two copies of this module. */
const shared = globalThis as { panelLedgerOptics?: Store };

/**
 * What comes of some inputs, under their names: from an earlier build where it is known, and worked out otherwise, on all
 * processors. What is alike is worked out once.
 */
export function workedOut(inputs: ReadonlyMap<string, OpticsInput>): ReadonlyMap<string, PackedResult> {
  shared.panelLedgerOptics ??= openStore();
  const store = shared.panelLedgerOptics;
  const wanted = [...inputs].map(([name, input]) => ({ name, input, key: keyOf(input) }));
  const missing = new Map<string, OpticsInput>();
  for (const { key, input } of wanted) {
    const known = store.used.get(key) ?? stored(store, key);
    if (known) store.used.set(key, known);
    else missing.set(key, input);
  }
  const found = estimateInThreads([...missing.values()]);
  [...missing].forEach(([key, input], i) => {
    // What no thread has worked out is worked out here, where its fault can be told.
    store.used.set(key, found[i] ?? packResult(estimatePanel(input)));
    store.isChanged = true;
  });
  return new Map(
    wanted.flatMap(({ name, key }) => {
      const result = store.used.get(key);
      return result ? [[name, result] as const] : [];
    }),
  );
}

/**
 * A name that follows from the input's values alone. What `serialize` makes of a number depends on how the engine holds
 * it, which depends on what has run before: the same input would have one name in this build and another in the next.
 */
export const keyOf = (input: OpticsInput): string =>
  createHash('sha256').update(JSON.stringify(input, inFull)).digest('base64url');

/** JSON knows no infinite number and no signed zero, and would say `{}` of what has no fields. */
function inFull(_key: string, it: unknown): unknown {
  if (typeof it === 'number')
    return Number.isFinite(it) && !Object.is(it, -0) ? it : `number ${Object.is(it, -0) ? '-0' : it}`;
  if (it instanceof Map || it instanceof Set || ArrayBuffer.isView(it)) throw new Error('an input that has no name');
  return it;
}

/** Keeps what was worked out for the next build; a folder that can't be written to is no reason to fail. */
export function keepOptics(): void {
  const store = shared.panelLedgerOptics;
  if (!store?.isChanged || store.calculation === undefined) return;
  store.isChanged = false;
  const used = [...store.used].map(([key, it]) => [key, store.old.get(key) ?? serialize(it)] as const);
  const old = [...store.old].filter(([key]) => !store.used.has(key)).slice(0, MOST_OLD);
  const results = [...used, ...old];
  const lengths = new Map(results.map(([key, it]) => [key, it.length]));
  const head = serialize({ calculation: store.calculation, lengths } satisfies Head);
  const start = Buffer.alloc(HEAD_LENGTH_BYTES);
  start.writeUInt32LE(head.length);
  try {
    writeWhole(storeFile(), Buffer.concat([start, head, ...results.map(([, it]) => it)]));
  } catch {
    // The next build works it out again.
  }
}

/** Lets go of all results, which a process that works out no further ledger has no use for. */
export function releaseOptics(): void {
  delete shared.panelLedgerOptics;
}

/** Leaves aside what earlier builds have worked out: for measuring how long it takes, and for tests. */
export function forgetOptics(): void {
  shared.panelLedgerOptics = { calculation: undefined, old: new Map(), used: new Map(), isChanged: false };
}

function openStore(): Store {
  const calculation = calculationHash();
  return { calculation, old: storedResults(calculation), used: new Map(), isChanged: false };
}

/** What a file of results begins with, after its own length; the results follow in the same order. */
interface Head {
  calculation: string;
  /** Bytes of each result, by its key. */
  lengths: ReadonlyMap<string, number>;
}

const HEAD_LENGTH_BYTES = 4;

function storedResults(calculation: string | undefined): Map<string, Uint8Array> {
  try {
    const bytes = readFileSync(storeFile());
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

/** A result of the file; undefined where it has none of that key. */
function stored({ old }: Store, key: string): PackedResult | undefined {
  const bytes = old.get(key);
  return bytes && (deserialize(bytes) as PackedResult);
}

/** Hash of the source of everything that `estimatePanel` may run, and of this form of it. */
function calculationHash(): string | undefined {
  const calculation = join(productFolder(), 'src', 'measure');
  const paths = globSync('**/*.ts', { cwd: calculation }).toSorted();
  if (paths.length === 0) return undefined;
  const hash = createHash('sha256').update(process.version);
  for (const path of paths) hash.update(path).update(readFileSync(join(calculation, path)));
  return hash.update(readFileSync(join(productFolder(), 'src', 'ledger', 'optics-pack.ts'))).digest('hex');
}

import { createHash } from 'node:crypto';
import { globSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import { estimatePanel } from '../measure/beam/estimate.ts';
import type { OpticsInput } from '../measure/beam/optics-input.ts';
import type { OpticsResult } from '../measure/beam/optics-result.ts';
import { type PackedResult, packResult, unpackResult } from './optics-pack.ts';
import { estimateInThreads } from './optics-threads.ts';

/**
 * Results of the optics model that earlier builds worked out, by a hash of what went in: a panel that was not measured
 * again has the same light, and a build that only changes prices need not fit a thousand beams. A result is the same
 * whether it comes from here or not.
 *
 * The file carries a hash of the calculation's own source, and is left aside when that has changed.
 */
const FILE = join('node_modules', '.cache', 'panel-ledger', 'optics');
const CALCULATION = join('src', 'measure');

/** Results that the file keeps besides those of the last build: other folders' and other days'. */
const MOST_OLD = 2000;

interface Store {
  /** Undefined where the source can't be read, so that nothing may be kept. */
  calculation: string | undefined;
  old: Map<string, PackedResult>;
  /** Those asked for in this process. */
  used: Map<string, PackedResult>;
  isChanged: boolean;
  /** While it is only seen what there is to work out: what was asked for and is not known. */
  wanted?: { inputs: Map<string, OpticsInput>; asked: number };
}

/** On the global object, as the ledger is: the build and its pages are two copies of this module. */
const shared = globalThis as { panelLedgerOptics?: Store };

/** `estimatePanel`, worked out once for the same input. */
export function estimateOnce(input: OpticsInput): OpticsResult {
  shared.panelLedgerOptics ??= openStore();
  const store = shared.panelLedgerOptics;
  const key = createHash('sha256').update(serialize(input)).digest('base64url');
  const known = store.used.get(key) ?? store.old.get(key);
  if (known) {
    store.used.set(key, known);
    return unpackResult(known);
  }
  if (store.wanted) {
    store.wanted.inputs.set(key, input);
    store.wanted.asked++;
    return { withheld: { code: 'not-measured' } };
  }
  const result = estimatePanel(input);
  store.used.set(key, packResult(result));
  store.isChanged = true;
  return result;
}

/**
 * Makes something of each item with `estimateOnce`, many at a time on all processors where results are not known yet:
 * each is made once to see what it asks for, and again, once that is worked out, only where something was missing.
 */
export function withOpticsAhead<Item, Made>(items: readonly Item[], make: (item: Item) => Made): Made[] {
  shared.panelLedgerOptics ??= openStore();
  const store = shared.panelLedgerOptics;
  const wanted = { inputs: new Map<string, OpticsInput>(), asked: 0 };
  store.wanted = wanted;
  let first: Array<{ made: Made; isWhole: boolean }>;
  try {
    first = items.map((item) => {
      const before = wanted.asked;
      return { made: make(item), isWhole: wanted.asked === before };
    });
  } finally {
    delete store.wanted;
  }
  const keys = [...wanted.inputs.keys()];
  estimateInThreads([...wanted.inputs.values()]).forEach((result, i) => {
    const key = keys[i];
    if (!result || key === undefined) return;
    store.used.set(key, result);
    store.isChanged = true;
  });
  return first.map(({ made, isWhole }, i) => (isWhole ? made : make(items[i] as Item)));
}

/** Keeps what was worked out for the next build; a folder that can't be written to is no reason to fail. */
export function keepOptics(): void {
  const store = shared.panelLedgerOptics;
  if (!store?.isChanged || store.calculation === undefined) return;
  store.isChanged = false;
  const old = [...store.old].filter(([key]) => !store.used.has(key)).slice(0, MOST_OLD);
  const results = new Map([...store.used, ...old]);
  try {
    mkdirSync(dirname(FILE), { recursive: true });
    const draft = `${FILE}.${process.pid}`;
    writeFileSync(draft, serialize({ calculation: store.calculation, results }));
    renameSync(draft, FILE);
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
  return { calculation, old: kept(calculation), used: new Map(), isChanged: false };
}

function kept(calculation: string | undefined): Map<string, PackedResult> {
  try {
    const found: unknown = calculation && deserialize(readFileSync(FILE));
    if (isStored(found) && found.calculation === calculation) return found.results;
  } catch {
    // There is no such file yet, or another version of Node wrote it.
  }
  return new Map();
}

function isStored(it: unknown): it is { calculation: string; results: Map<string, PackedResult> } {
  return typeof it === 'object' && it !== null && 'calculation' in it && 'results' in it && it.results instanceof Map;
}

/** Hash of the source of everything that `estimatePanel` may run, and of this form of it. */
function calculationHash(): string | undefined {
  const paths = globSync('**/*.ts', { cwd: CALCULATION }).toSorted();
  if (paths.length === 0) return undefined;
  const hash = createHash('sha256').update(process.version);
  for (const path of paths) hash.update(path).update(readFileSync(join(CALCULATION, path)));
  return hash.update(readFileSync(join('src', 'ledger', 'optics-pack.ts'))).digest('hex');
}

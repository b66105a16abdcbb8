import { AsyncLocalStorage } from 'node:async_hooks';
import type { Ledger, PanelEntry } from '../../ledger/ledger.ts';
import type { Loaded } from '../../ledger/load-ledger.ts';

/** What of the ledger a page has read while it was rendered. */
export interface PageReads {
  /** Panels, by slug. */
  panels: Set<string>;
  /** It went through all of them, or read what is made of all. */
  all: boolean;
  /** What it was given that is made of all of them, by name. */
  given: Set<string>;
}

type Made<T> = (panel: PanelEntry, ledger: Ledger) => T;

/** On the global object, as the ledger is: the build and its pages are two copies of this module. */
const shared = globalThis as {
  panelLedgerReads?: AsyncLocalStorage<PageReads | undefined>;
  panelLedgerMade?: Map<string, Made<unknown>>;
};
shared.panelLedgerReads ??= new AsyncLocalStorage();
shared.panelLedgerMade ??= new Map();
const reads = shared.panelLedgerReads;
const made = shared.panelLedgerMade;

/** Renders a page, and tells what of the ledger it has read. */
export async function withReads<T>(render: () => Promise<T>): Promise<{ result: T; reads: PageReads }> {
  const own: PageReads = { panels: new Set(), all: false, given: new Set() };
  return { result: await reads.run(own, render), reads: own };
}

/**
 * A function that makes something for a panel's page of all panels. The page then rests on what comes of it, and not on
 * all that went in: it is kept as long as that stays the same.
 *
 * @param name its own, among all such functions
 */
export function madeOfAll<T>(name: string, make: Made<T>): Made<T> {
  made.set(name, make);
  return (panel, ledger) => {
    reads.getStore()?.given.add(name);
    return reads.run(undefined, () => make(panel, ledger));
  };
}

/** What such a function makes for a panel; undefined where there is none of that name any more. */
export function givenTo(panel: PanelEntry, ledger: Ledger, name: string): { value: unknown } | undefined {
  const make = made.get(name);
  return make && { value: reads.run(undefined, () => make(panel, ledger)) };
}

const readOne = (slug: string) => reads.getStore()?.panels.add(slug);
const readAll = () => {
  const store = reads.getStore();
  if (store) store.all = true;
};

/** The same, but whatever a page reads of panels is noted. Guide and day are every page's. */
export function watched({ content, ledger }: Loaded): Loaded {
  return {
    content: { ...content, panels: watchedMap(content.panels) },
    ledger: noting({ ...ledger, panels: watchedMap(ledger.panels) }, OF_ALL),
  };
}

/** What is made of all panels. */
const OF_ALL = ['classes', 'classesByEmitted', 'frontier', 'instruments'] as const satisfies ReadonlyArray<
  keyof Ledger
>;

function noting<T extends object>(it: T, ofAll: ReadonlyArray<keyof T>): T {
  for (const key of ofAll) {
    const value = it[key];
    Object.defineProperty(it, key, {
      enumerable: true,
      get: () => {
        readAll();
        return value;
      },
    });
  }
  return it;
}

function watchedMap<T>(map: ReadonlyMap<string, T>): Map<string, T> {
  return new Proxy(new Map(map), {
    get(target, key) {
      if (key === 'get' || key === 'has') {
        return (slug: string) => {
          readOne(slug);
          return target[key](slug);
        };
      }
      // How many there are, and every way to go through them.
      readAll();
      const value = Reflect.get(target, key, target);
      return typeof value === 'function' ? value.bind(target) : value;
    },
  });
}

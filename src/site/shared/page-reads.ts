import { AsyncLocalStorage } from 'node:async_hooks';
import type { ClassTable, Ledger, PanelEntry } from '../../ledger/ledger.ts';
import type { Loaded } from '../../ledger/load-ledger.ts';
import { STANDING } from '../../ledger/standing.ts';

/** What of the ledger a page has read while it was rendered. */
export interface PageReads {
  /** Panels, by slug. */
  panels: Set<string>;
  /** Panels of which it read where they stand among the others. */
  standings: Set<string>;
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
  const { result, reads } = noteReads(render);
  return { result: await result, reads };
}

/** Makes something at once, and tells what of the ledger it has read. */
export function noteReads<T>(make: () => T): { result: T; reads: PageReads } {
  const own: PageReads = { panels: new Set(), standings: new Set(), all: false, given: new Set() };
  return { result: reads.run(own, make), reads: own };
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
const readStanding = (slug: string) => reads.getStore()?.standings.add(slug);
const readAll = () => {
  const store = reads.getStore();
  if (store) store.all = true;
};

/** The same, but whatever a page reads of panels is noted. Guide and day are every page's. */
export function watched({ content, ledger }: Loaded): Loaded {
  const panels = new Map(
    [...ledger.panels].map(([slug, it]) => [slug, noting({ ...it }, STANDING, () => readStanding(slug))]),
  );
  // One panel is one object, wherever the ledger has it.
  const ofPanels = (tables: readonly ClassTable[]) =>
    tables.map((it) => withPanels(it, ({ slug }) => panels.get(slug)));
  return {
    content: { ...content, panels: watchedMap(content.panels) },
    ledger: noting(
      {
        ...ledger,
        panels: watchedMap(panels),
        classes: ofPanels(ledger.classes),
        classesByEmitted: ofPanels(ledger.classesByEmitted),
      },
      OF_ALL,
      readAll,
    ),
  };
}

/** What is made of all panels. */
const OF_ALL = ['classes', 'classesByEmitted', 'frontier', 'instruments'] as const satisfies ReadonlyArray<
  keyof Ledger
>;

/** A table with other objects for its panels. */
function withPanels(table: ClassTable, other: (panel: PanelEntry) => PanelEntry | undefined): ClassTable {
  const others = (panels: readonly PanelEntry[]) => panels.map((it) => other(it) ?? it);
  return {
    ...table,
    groups: table.groups.map((it) => ({ ...it, panels: others(it.panels) })),
    unranked: others(table.unranked),
  };
}

/** Has some fields of an object noted when they are read. */
function noting<T extends object>(it: T, fields: ReadonlyArray<keyof T>, note: () => void): T {
  for (const key of fields) {
    const value = it[key];
    Object.defineProperty(it, key, {
      enumerable: true,
      get: () => {
        note();
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

import { needsAstro } from '../../content/read/needs-astro.ts';
import type { Loaded } from '../../ledger/load-ledger.ts';

/** What a process is told that has Astro make a program. */
export interface ProgramOrder {
  /** An empty folder for it. */
  draft: string;
  /** Path of the guide on its host. */
  base: string;
  /** Notes that the bundler compiles: their panel and their file. */
  notes: Array<{ id: string; path: string; body: string }>;
}

/** Notes of a guide that Astro has to make something of, which goes into the program. */
export function compiledNotes({ content }: Pick<Loaded, 'content'>): ProgramOrder['notes'] {
  return [...content.panels.values()]
    .filter(({ source }) => needsAstro(source))
    .map(({ id, source }) => ({ id, path: source.path, body: source.body }));
}

/** On the global object, as the ledger is: Astro's configuration is read by a copy of this module. */
const shared = globalThis as { panelLedgerProgramOrder?: ProgramOrder };

/** In a process that makes a program and nothing else: what it was told. */
export const programOrder = (): ProgramOrder | undefined => shared.panelLedgerProgramOrder;

/** From here on this process makes a program and nothing else. */
export function takeOrder(order: ProgramOrder): void {
  shared.panelLedgerProgramOrder = order;
}

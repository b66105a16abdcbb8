import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ContentError } from '../content/read/problem-list.ts';
import type { Problem } from '../content/schema/problem.ts';
import type { Loaded } from '../ledger/load-ledger.ts';
import { type AddressList, addressListText, hasAll, readAddressList, united } from '../site/addresses/address-list.ts';
import { droppedAddresses } from '../site/addresses/dropped-addresses.ts';
import { guideAddresses } from '../site/addresses/guide-addresses.ts';

/** Where a content folder keeps what it has published. */
export const ADDRESS_FILE = 'addresses.txt';

/** The addresses that a guide has published, as far as its content folder keeps them. */
function keptAddresses(folder: string): { list: AddressList; problems: Problem[] } | undefined {
  const file = join(folder, ADDRESS_FILE);
  return existsSync(file) ? readAddressList(readFileSync(file, 'utf8'), file) : undefined;
}

/**
 * Published addresses that a build of the content would drop, and lines of their list that can't be read.
 *
 * @param folder the content folder
 */
export function addressProblems({ ledger }: Loaded, folder: string): Problem[] {
  const kept = keptAddresses(folder);
  if (!kept) return [];
  return [...kept.problems, ...droppedAddresses(kept.list, ledger, join(folder, ADDRESS_FILE))];
}

/** @throws ContentError where a build would drop a published address */
export function ensureAddresses(loaded: Loaded, folder: string): void {
  const problems = addressProblems(loaded, folder);
  if (problems.length > 0) throw new ContentError(problems);
}

/** How the list stands to a guide that has been built. */
export interface AddressState {
  /** Of the list. */
  file: string;
  /** Addresses that the guide has and the list has not, parts of pages aside. */
  fresh: number;
  state: 'whole' | 'behind' | 'none' | 'written';
}

/**
 * Compares the list with a guide that has been built, and adds to it where that is asked for. What stands in it stays.
 *
 * @throws ContentError where a line of it can't be read
 */
export function addressState({ ledger }: Loaded, folder: string, isRecorded: boolean): AddressState {
  const file = join(folder, ADDRESS_FILE);
  const live = guideAddresses(ledger);
  const kept = keptAddresses(folder);
  if (kept && kept.problems.length > 0) throw new ContentError(kept.problems);
  const fresh = [...live.keys()].filter((it) => !kept?.list.has(it)).length;
  if (kept && hasAll(kept.list, live)) return { file, fresh, state: 'whole' };
  if (!isRecorded) return { file, fresh, state: kept ? 'behind' : 'none' };
  writeFileSync(file, addressListText(united(kept?.list ?? new Map(), live)));
  return { file, fresh, state: 'written' };
}

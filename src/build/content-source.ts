import { glob, type Loader } from 'astro/loaders';
import { COLLECTIONS, type CollectionName, entryId } from '../content/schema/collections.ts';
import { contentFolder } from '../ledger/load-ledger.ts';
import { checkedLoader } from './checked-loader.ts';

/** What Astro's collections are made of. */
export const contentSource = { COLLECTIONS, loaderOf };

/**
 * Where a collection's entries come from: in a build from the content that was checked; while the tester writes, files
 * change one by one, and Astro watches them itself.
 */
function loaderOf(name: CollectionName, isBuild: boolean): Loader {
  if (isBuild) return checkedLoader(name);
  const { pattern } = COLLECTIONS[name];
  return glob({ pattern, base: contentFolder(), generateId: ({ entry }) => entryId(entry) });
}

const shared = globalThis as { panelLedgerSource?: typeof contentSource };

/**
 * Hands it over to `content.config.ts`, which Astro loads by way of the bundler: each of the two hundred files behind it
 * would be compiled a second time, which was a tenth of a build.
 */
export function handOver(): void {
  shared.panelLedgerSource = contentSource;
}

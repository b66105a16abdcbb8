import { COLLECTIONS, entryId } from '../content/schema/collections.ts';
import { contentFolder } from '../ledger/load-ledger.ts';
import { checkedLoader } from './checked-loader.ts';

/** What Astro's collections are made of. */
export const contentSource = { COLLECTIONS, entryId, contentFolder, checkedLoader };

const shared = globalThis as { panelLedgerSource?: typeof contentSource };

/**
 * Hands it over to `content.config.ts`, which Astro loads by way of the bundler: each of the two hundred files behind it
 * would be compiled a second time, which was a tenth of a build.
 */
export function handOver(): void {
  shared.panelLedgerSource = contentSource;
}

import { type Loaded, loadLedger } from '../../ledger/load-ledger.ts';

/**
 * The ledger that every page reads. While the tester writes, drafts are shown and files are looked at again at
 * each request; a build reads once and leaves drafts out.
 */
export function siteLedger(): Loaded {
  const dev = import.meta.env.DEV;
  return loadLedger({ drafts: dev, watch: dev });
}

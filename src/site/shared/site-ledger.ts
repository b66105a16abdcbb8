import { type Loaded, liveLedger, loadLedger } from '../../ledger/load-ledger.ts';
import { watched } from './page-reads.ts';

/** The last that was asked for, and the same as pages get it. */
let last: { loaded: Loaded; given: Loaded } | undefined;

/**
 * The ledger that every page reads. While the tester writes, drafts are shown and files are looked at again at
 * each request; a build reads once and leaves drafts out, and notes what each page has read.
 */
export function siteLedger(): Loaded {
  if (import.meta.env?.DEV) return liveLedger();
  const loaded = loadLedger();
  if (last?.loaded !== loaded) last = { loaded, given: watched(loaded) };
  return last.given;
}

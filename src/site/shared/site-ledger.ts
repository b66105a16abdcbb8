import { type Loaded, liveLedger, loadLedger } from '../../ledger/load-ledger.ts';
import { watched } from './page-reads.ts';

/** The last as pages get it, and what it was made for. */
let last: { askedFor: string; given: Loaded } | undefined;

/** What a process's ledger is of: to look for it at every page would take longer than many a page does. */
const askedFor = ({ LEDGER_CONTENT, LEDGER_TODAY, SOURCE_DATE_EPOCH }: NodeJS.ProcessEnv) =>
  [LEDGER_CONTENT, LEDGER_TODAY, SOURCE_DATE_EPOCH].join('\n');

/**
 * The ledger that every page reads. While the tester writes, drafts are shown and files are looked at again at
 * each request; a build reads once and leaves drafts out, and notes what each page has read.
 */
export function siteLedger(): Loaded {
  if (import.meta.env?.DEV) return liveLedger();
  const asked = askedFor(process.env);
  if (last?.askedFor !== asked) last = { askedFor: asked, given: watched(loadLedger()) };
  return last.given;
}

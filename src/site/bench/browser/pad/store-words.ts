/** What the browser's store could not do, for the person at the bench. No DOM. */
import { BenchStoreError, type StoreFault } from '../bench-store.ts';

const WORDS: Readonly<Record<StoreFault, string>> = {
  'not-there':
    'This browser keeps nothing for this page: a private window, or storage is forbidden. Readings would be lost, so none is taken. Open the page in an ordinary window.',
  full: 'The device has no room left. What you see is kept; what you typed last is not. Make room, then enter it again.',
  newer: 'A newer version of the pad has been used on this device. Load the page again.',
  closed: 'The browser has closed the store. What you see is kept; what you typed last is not. Load the page again.',
  gone: 'This run was removed in another window.',
  behind: 'Another window has changed this run meanwhile. It is shown as it is now; look, and do it again.',
  taken: 'There is one of that name already.',
};

/** Why something could not be written, and what to do. */
export function storeWords(error: unknown): string {
  if (error instanceof BenchStoreError) return WORDS[error.fault];
  const why = error instanceof Error ? error.message : String(error);
  // What is a sentence of ours says all; what is not comes from the browser.
  return /^[A-Z].*\.$/.test(why) ? why : `That did not work: ${why}.`;
}

import { setImmediate } from 'node:timers/promises';

/** ms that one may be at work before others have their turn. */
const LONGEST = 2;

let last = 0;

/**
 * Lets others of this process have their turn, such as who feeds the indexer, if they have had none for some time. Whoever
 * writes file after file asks for it between them, since nothing else there waits.
 */
export async function giveTurn(): Promise<void> {
  if (performance.now() - last < LONGEST) return;
  await setImmediate();
  last = performance.now();
}

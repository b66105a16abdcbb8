/** Draws cards in a thread of its own (`card-threads.ts`): of one panel or method after the other, as they come. */
import { workerData } from 'node:worker_threads';
import { keepCompiled } from '../compile-cache.ts';
import { type CardWork, taken } from './card-work.ts';

// A thread does not take from its process what Node has compiled.
keepCompiled();
const { makeCard } = await import('./make-card.ts');
const work = workerData as CardWork;
for (let cards = taken(work); cards; cards = taken(work)) for (const it of cards) await makeCard(it, work.store);

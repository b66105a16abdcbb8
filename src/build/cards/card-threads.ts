import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { productFolder } from '../../content/read/product-folder.ts';
import { type CardWork, cardWork, leaveRest, left } from './card-work.ts';

/** Panels or methods that are worth a thread more: what it takes to start is what fourteen of them take. Our own choice. */
const WORTH_A_THREAD = 30;

/** Threads at most: each takes about 95 MiB, and four draw faster than pages are rendered. Our own choice. */
const MOST_THREADS = 4;

/** A drawing and the typefaces: half of this is used. MiB. */
const MEMORY = { maxOldGenerationSizeMb: 96, maxYoungGenerationSizeMb: 4 } as const;

const threadFile = () => join(productFolder(), 'src', 'build', 'cards', 'card-worker.ts');

/** Cards that are being drawn. */
export interface CardThreads {
  /** Waits for those that are not drawn yet, with a thread more now that the caller has nothing else to do. */
  finish(): Promise<void>;
  /** Leaves the rest, since nobody wants them any more. */
  stop(): void;
}

/**
 * Draws cards beside what else this process does, on the processors that it leaves. A thread that fails is silent: what
 * it was to draw is not there then, and is for the caller, where the fault can be told.
 */
export function drawInThreads(waiting: CardWork['waiting'], store: string): CardThreads {
  const work = cardWork(waiting, store);
  const wanted = () => Math.ceil(left(work) / WORTH_A_THREAD);
  const threads: Array<{ worker: Worker; ended: Promise<unknown> }> = [];
  const start = () => {
    const worker = new Worker(threadFile(), { workerData: work, resourceLimits: MEMORY });
    worker.on('error', () => {});
    const ended = new Promise((resolve) => worker.once('exit', resolve));
    // A build that fails waits for no cards.
    worker.unref();
    threads.push({ worker, ended });
  };
  const processors = Math.min(availableParallelism(), MOST_THREADS);
  for (let i = 0; i < Math.min(wanted(), Math.max(1, processors - 1)); i++) start();
  return {
    async finish() {
      if (threads.length > 0 && threads.length < processors && wanted() > 1) start();
      for (const { worker } of threads) worker.ref();
      await Promise.all(threads.map(({ ended }) => ended));
    },
    stop: () => leaveRest(work),
  };
}

import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { MessageChannel, receiveMessageOnPort, Worker } from 'node:worker_threads';
import { productFolder } from '../content/read/product-folder.ts';
import type { OpticsInput } from '../measure/beam/optics-input.ts';
import type { PackedResult } from './optics-pack.ts';

/** What every thread is given: all inputs, and where the next one and the number of those done are counted. */
export interface ThreadWork {
  inputs: readonly OpticsInput[];
  places: Int32Array<SharedArrayBuffer>;
}

/** Places of the two counts. */
export const NEXT = 0;
export const DONE = 1;

/** Fewer panels than this are done sooner here than threads start. Our own choice. */
const FEWEST = 6;
/** How long to wait for any one panel, ms, before the rest is left to the one who asked. */
const PATIENCE = 120_000;
const threadFile = () => join(productFolder(), 'src', 'ledger', 'optics-worker.ts');

/**
 * Works out the light of many panels on all processors. Waits for it: who asks needs no promise, and the results are
 * the same as without threads.
 *
 * @returns results in the order of the inputs; undefined where none came, which the caller works out itself
 */
export function estimateInThreads(
  inputs: readonly OpticsInput[],
  threads = Math.min(availableParallelism(), inputs.length),
): Array<PackedResult | undefined> {
  const results = new Array<PackedResult | undefined>(inputs.length).fill(undefined);
  const thread = threadFile();
  if (threads < 2 || inputs.length < FEWEST || !existsSync(thread)) return results;
  const places = new Int32Array(new SharedArrayBuffer(2 * Int32Array.BYTES_PER_ELEMENT));
  const started = Array.from({ length: threads }, () => {
    const { port1, port2 } = new MessageChannel();
    const worker = new Worker(thread, { workerData: { inputs, places, port: port2 }, transferList: [port2] });
    // A thread that can't start is heard of too late to matter: what it would have done is done by the others, or here.
    worker.on('error', () => {});
    worker.unref();
    return { worker, port: port1 };
  });
  const collect = () => {
    for (const { port } of started) {
      for (let it = receiveMessageOnPort(port); it; it = receiveMessageOnPort(port)) {
        const { at, result } = it.message as { at: number; result?: PackedResult };
        results[at] = result;
      }
    }
  };
  for (let done = Atomics.load(places, DONE); done < inputs.length; done = Atomics.load(places, DONE)) {
    if (Atomics.wait(places, DONE, done, PATIENCE) === 'timed-out') break;
    collect();
  }
  collect();
  for (const { worker, port } of started) {
    port.close();
    void worker.terminate();
  }
  return results;
}

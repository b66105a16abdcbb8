/** Works out the light of panels in a thread of its own (`optics-threads.ts`), one after the other as they come. */
import { type MessagePort, workerData } from 'node:worker_threads';
import { estimatePanel } from '../measure/beam/estimate.ts';
import { packResult } from './optics-pack.ts';
import { DONE, NEXT, type ThreadWork } from './optics-threads.ts';

const { inputs, places, port } = workerData as ThreadWork & { port: MessagePort };
for (let at = Atomics.add(places, NEXT, 1); at < inputs.length; at = Atomics.add(places, NEXT, 1)) {
  const input = inputs[at];
  try {
    if (input) port.postMessage({ at, result: packResult(estimatePanel(input)) });
  } catch {
    // What can't be worked out is tried again by the one who asked, where its fault can be told.
    port.postMessage({ at });
  }
  Atomics.add(places, DONE, 1);
  Atomics.notify(places, DONE);
}

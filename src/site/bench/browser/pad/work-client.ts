/** The page's side of the thread that works out a run. */
import type { BenchSetup } from '../bench-data.ts';
import type { Run } from '../run.ts';
import type { FromThread, KnownFile, ToThread } from './work-messages.ts';

export interface WorkClient {
  /** Has a run worked out; while one is, of those that come meanwhile the last one alone. */
  work(run: Run, known: KnownFile): void;
}

/** @param done takes what was worked out */
export function workClient(
  setup: BenchSetup,
  done: (made: FromThread) => void,
  failed: (why: string) => void,
): WorkClient {
  const thread = new Worker(new URL('./work-thread.ts', import.meta.url), { type: 'module' });
  const send = (message: ToThread) => thread.postMessage(message);
  let number = 0;
  let isBusy = false;
  let waiting: { run: Run; known: KnownFile } | undefined;
  const next = () => {
    if (isBusy || !waiting) return;
    isBusy = true;
    number += 1;
    send({ ...waiting, number });
    waiting = undefined;
  };
  thread.addEventListener('message', ({ data }: MessageEvent<FromThread>) => {
    isBusy = false;
    done(data);
    next();
  });
  thread.addEventListener('error', (event) => {
    isBusy = false;
    failed(event.message || 'its script could not be loaded');
  });
  send({ setup });
  return {
    work: (run, known) => {
      waiting = { run, known };
      next();
    },
  };
}

/**
 * Keeps the bench's pages on the device, so that they work with the network off: the page's side of the worker that a
 * build writes (`bench-worker.ts`). A version is used whole or not at all.
 */

import { inSite } from '../../shared/browser/site-path.ts';

/** Where a build puts the worker; its folder is all that it reaches. */
export const WORKER = '/bench/worker.js';

/**
 * `none` this browser or address keeps nothing (a private window, not over https, the development server), `keeping` the pages are being put on
 * the device, `kept` they work with the network off, `newer` a newer version is on the device and waits to be changed to,
 * `failed` they could not be kept, as without a network at the first visit or with a full disk.
 */
export type OfflineState = 'none' | 'keeping' | 'kept' | 'newer' | 'failed';

export interface BenchOffline {
  /**
   * Changes to the newer version: every window of the bench is loaded again. Nothing is lost that is in the store; what
   * is half typed is.
   */
  change(): void;
  /** Asks the site whether there is a newer version. It is asked at every visit by itself. */
  check(): Promise<void>;
}

/** What pages and worker say to each other. */
export type WorkerMessage = { readonly kind: 'change' } | { readonly kind: 'version' };

/**
 * Keeps the bench on this device, and tells how it stands, at once and at every change.
 *
 * @param version that the page shows: one that the worker does not have counts as `newer` waiting
 */
export function keepOffline(version: string, tell: (state: OfflineState) => void): BenchOffline {
  const workers = 'serviceWorker' in navigator ? navigator.serviceWorker : undefined;
  let registration: ServiceWorkerRegistration | undefined;
  let isChanging = false;
  let last: OfflineState | undefined;
  const say = (state: OfflineState) => {
    if (state !== last) tell(state);
    last = state;
  };
  const look = async () => {
    if (!registration) return;
    if (registration.waiting && registration.active) say('newer');
    else if (registration.active) say((await versionOf(registration.active)) === version ? 'kept' : 'newer');
    else if (registration.installing) say('keeping');
  };
  const follow = (worker: ServiceWorker) => {
    worker.addEventListener('statechange', () => {
      if (worker.state === 'redundant' && !registration?.active) say('failed');
      else look();
    });
    look();
  };

  if (!workers) say('none');
  else {
    let isKept = workers.controller !== null;
    // Another version has taken over, here or in another window: its data must not meet the scripts of this one.
    workers.addEventListener('controllerchange', () => {
      if (isKept || isChanging) location.reload();
      isKept = true;
      look();
    });
    workers
      .register(inSite(WORKER))
      .then((it) => {
        registration = it;
        it.addEventListener('updatefound', () => it.installing && follow(it.installing));
        if (it.installing) follow(it.installing);
        else look();
      })
      .catch(async () => say((await hasWorker()) ? 'failed' : 'none'));
  }

  return {
    change: () => {
      isChanging = true;
      if (registration?.waiting) registration.waiting.postMessage({ kind: 'change' } satisfies WorkerMessage);
      else location.reload();
    },
    check: async () => {
      await registration?.update().catch(() => undefined);
    },
  };
}

/** False where the site has no worker, as while its tester writes; true without a network. */
async function hasWorker(): Promise<boolean> {
  const answer = await fetch(WORKER, { method: 'HEAD', cache: 'no-store' }).catch(() => undefined);
  return answer?.status !== 404;
}

/** The version of the site that a worker has. */
function versionOf(worker: ServiceWorker): Promise<string> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }) => resolve(String(data));
    worker.postMessage({ kind: 'version' } satisfies WorkerMessage, [port2]);
  });
}

/**
 * The worker that keeps the bench's pages on the device. A build writes this function into a file of its own, together
 * with the list of what it keeps (`src/build/bench-worker-file.ts`), so it uses nothing from outside itself.
 */
import type { WorkerMessage } from './bench-offline.ts';

/** What one build's worker keeps. */
export interface KeptFiles {
  /** Differs where any of the files does. */
  readonly version: string;
  /** The site's own version, as its pages show it. */
  readonly site: string;
  /** Addresses, each with the SHA-256 of what stands there, in hexadecimal digits. */
  readonly files: Readonly<Record<string, string>>;
}

/** What the worker uses of its surroundings: the types of workers and of pages don't go together. */
export interface WorkerScope {
  readonly caches: CacheStorage;
  readonly crypto: Pick<Crypto, 'subtle'>;
  readonly location: { readonly href: string; readonly origin: string };
  readonly registration: { unregister(): Promise<boolean> };
  readonly clients: {
    claim(): Promise<void>;
    matchAll(options: { type: 'window' }): Promise<readonly OpenWindow[]>;
  };
  fetch(request: string, options?: RequestInit): Promise<Response>;
  skipWaiting(): Promise<void>;
  addEventListener(kind: 'install' | 'activate', work: (event: LastingEvent) => void): void;
  addEventListener(kind: 'fetch', work: (event: FetchEvent) => void): void;
  addEventListener(kind: 'message', work: (event: MessageEvent<WorkerMessage>) => void): void;
}

interface OpenWindow {
  readonly id: string;
  readonly url: string;
  navigate(url: string): Promise<unknown>;
}

interface LastingEvent {
  waitUntil(work: Promise<unknown>): void;
}

export interface FetchEvent extends LastingEvent {
  readonly request: Pick<Request, 'method' | 'mode' | 'url'>;
  /** The window as it will be once the page that it asks for has begun. */
  readonly resultingClientId: string;
  respondWith(response: Promise<Response>): void;
}

/**
 * Runs the worker. Everything that it keeps is of one build: it is put on the device whole, held against the hashes of
 * that build, or not at all; and what it keeps is answered from there alone. A newer version waits until a page asks for
 * it. Where the site has no worker any more, this one takes itself away, with all that it kept.
 */
export function benchWorker(scope: WorkerScope, { version, site, files }: KeptFiles): void {
  const PREFIX = 'panel-ledger-bench ';
  const name = PREFIX + version;

  async function hashOf(bytes: ArrayBuffer): Promise<string> {
    const hash = new Uint8Array(await scope.crypto.subtle.digest('SHA-256', bytes));
    return Array.from(hash, (it) => it.toString(16).padStart(2, '0')).join('');
  }

  /** What stands at an address, if it is what the build put there. */
  async function whole(response: Response | undefined, hash: string): Promise<Response | undefined> {
    if (!response?.ok) return undefined;
    const bytes = await response.arrayBuffer();
    if ((await hashOf(bytes)) !== hash) return undefined;
    // Anew, since a page can't be opened from an answer that was led elsewhere.
    return new Response(bytes, { headers: { 'content-type': response.headers.get('content-type') ?? '' } });
  }

  async function fill(): Promise<void> {
    const cache = await scope.caches.open(name);
    const put = async ([address, hash]: [string, string]) => {
      const kept = await whole(await scope.caches.match(address), hash);
      const file = kept ?? (await whole(await scope.fetch(address, { cache: 'no-store' }), hash));
      if (!file) throw new Error(`${address} is not what the build of this version has put there`);
      await cache.put(address, file);
    };
    try {
      await Promise.all(Object.entries(files).map(put));
    } catch (error) {
      await scope.caches.delete(name);
      throw error;
    }
  }

  async function dropOthers(): Promise<void> {
    const names = (await scope.caches.keys()).filter((it) => it.startsWith(PREFIX) && it !== name);
    await Promise.all(names.map((it) => scope.caches.delete(it)));
  }

  /** A site that answers, and has no worker: then the pages that are kept are no pages of it any more. */
  async function leaveIfGone(asking: string): Promise<void> {
    const answer = await scope
      .fetch(scope.location.href, { cache: 'no-store', redirect: 'manual' })
      .catch(() => undefined);
    // Anything else may be a fault that passes, or somebody who has to log in: then what is kept is all that there is.
    if (answer?.status !== 404 && answer?.status !== 410) return;
    await scope.registration.unregister();
    for (const it of await scope.caches.keys()) if (it.startsWith(PREFIX)) await scope.caches.delete(it);
    let windows = await scope.clients.matchAll({ type: 'window' });
    // The window that has just asked is there only once its page has begun; until then the page before may be there.
    for (let tries = 0; tries < 30 && !windows.some((it) => it.id === asking); tries++) {
      await new Promise((done) => setTimeout(done, 100));
      windows = await scope.clients.matchAll({ type: 'window' });
    }
    for (const it of windows) await it.navigate(it.url).catch(() => undefined);
  }

  async function answer(address: string, url: string): Promise<Response> {
    // The browser may clear what is kept; to open it would make it anew.
    return (await scope.caches.match(address, { cacheName: name })) ?? (await scope.fetch(url));
  }

  scope.addEventListener('install', (event) => event.waitUntil(fill()));
  scope.addEventListener('activate', (event) => event.waitUntil(dropOthers().then(() => scope.clients.claim())));
  scope.addEventListener('fetch', (event) => {
    const { method, mode, url } = event.request;
    const { origin, pathname } = new URL(url);
    if (method !== 'GET' || origin !== scope.location.origin || !Object.hasOwn(files, pathname)) return;
    event.respondWith(answer(pathname, url));
    if (mode === 'navigate') event.waitUntil(leaveIfGone(event.resultingClientId));
  });
  scope.addEventListener('message', ({ data, ports }) => {
    if (data.kind === 'change') scope.skipWaiting();
    else if (data.kind === 'version') ports[0]?.postMessage(site);
  });
}

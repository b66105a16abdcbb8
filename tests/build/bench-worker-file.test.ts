import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { runInNewContext } from 'node:vm';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { keptFiles, writeBenchWorker } from '../../src/build/bench-worker-file.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'bench-worker-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

function put(files: Readonly<Record<string, string>>): void {
  for (const [file, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, file)), { recursive: true });
    writeFileSync(join(folder, file), text);
  }
}

const SITE = {
  'bench/index.html':
    '<link rel="canonical" href="https://guide.example/bench/"><link rel="stylesheet" href="/_astro/pad.css"><a href="/methods/x.json">x</a><script type="module" src="/_astro/pad.js"></script>',
  'bench/sheet/index.html': '<img src="/icon.svg">',
  'index.html': '<script src="/_astro/guide.js"></script>',
  'icon.svg': '<svg/>',
  '_astro/pad.css': '@font-face{src:url(/_astro/sans.woff2)}b{background:url("../icon.svg")}',
  '_astro/sans.woff2': 'x',
  '_astro/pad.js':
    'import{a}from"./part.js";new Worker("/_astro/work.js");const m=["_astro/late.js","/nowhere.js"];fetch(\'/data/bench.json\');import(`../_astro/late.js`)',
  '_astro/part.js': '',
  '_astro/work.js': 'import "./part.js"',
  '_astro/late.js': '',
  '_astro/guide.js': '',
  'data/bench.json':
    '{"version":"abc","panels":[{"address":"/data/bench/plover.json"},{"address":"/data/bench/gone.json"}]}',
  'data/bench/plover.json': '{}',
  'data/bench/other.json': '{}',
  'methods/x.json': '{}',
};

test('keeps what the pages of the bench load, and what that loads', () => {
  put(SITE);
  expect(Object.keys(keptFiles(folder)?.files ?? {})).toEqual([
    '/_astro/late.js',
    '/_astro/pad.css',
    '/_astro/pad.js',
    '/_astro/part.js',
    '/_astro/sans.woff2',
    '/_astro/work.js',
    '/bench/',
    '/bench/sheet/',
    '/data/bench.json',
    '/data/bench/plover.json',
    '/icon.svg',
  ]);
});

test('is another version where anything that it keeps is another, and only there', () => {
  put(SITE);
  const before = keptFiles(folder);
  put({ 'index.html': 'another', '_astro/guide.js': 'another' });
  expect(keptFiles(folder)).toEqual(before);
  put({ '_astro/sans.woff2': 'y' });
  expect(keptFiles(folder)?.version).not.toBe(before?.version);
  expect(keptFiles(folder)?.site).toBe('abc');
});

test('a site without the bench has no worker', () => {
  put({ 'index.html': '' });
  writeBenchWorker(folder);
  expect(() => readFileSync(join(folder, 'bench/worker.js'))).toThrow(/ENOENT/);
});

/** Runs the worker that was written as a browser would, far enough to be opened a page of it. */
async function openedWith(answer: () => Promise<Response>): Promise<string[]> {
  put(SITE);
  writeBenchWorker(folder);
  const heard = new Map<string, (event: unknown) => void>();
  const done: string[] = [];
  const window = (id: string) => ({ id, url: '/bench/', navigate: async () => done.push(`open in ${id}`) });
  // The page that is left goes as the one that was asked for begins, a moment after.
  const seen = [[window('left')], [window('asked')]];
  const self = {
    location: { href: 'https://guide.example/bench/worker.js', origin: 'https://guide.example' },
    addEventListener: (kind: string, it: (event: unknown) => void) => heard.set(kind, it),
    fetch: answer,
    registration: { unregister: async () => done.push('unregister') },
    caches: {
      match: async () => new Response('kept'),
      keys: async () => ['panel-ledger-bench abc', 'of something else'],
      delete: async (name: string) => done.push(`delete ${name}`),
    },
    clients: { matchAll: async () => seen.shift() ?? [] },
  };
  runInNewContext(readFileSync(join(folder, 'bench/worker.js'), 'utf8'), { self, URL, setTimeout });
  const waiting: Promise<unknown>[] = [];
  let response: Promise<Response> | undefined;
  const request = { method: 'GET', mode: 'navigate', url: 'https://guide.example/bench/?run=a' };
  heard.get('fetch')?.({
    request,
    resultingClientId: 'asked',
    respondWith: (it: Promise<Response>) => {
      response = it;
    },
    waitUntil: (it: Promise<unknown>) => waiting.push(it),
  });
  await Promise.all(waiting);
  expect(await (await response)?.text()).toBe('kept');
  return done;
}

const answer = (status: number, type: string) => async () =>
  new Response(status === 304 ? null : '', { status, headers: { 'content-type': type } });

test.each([
  ['without a network', () => Promise.reject(new TypeError('Failed to fetch'))],
  ['with its worker there', answer(200, 'text/javascript; charset=utf-8')],
  ['where somebody has to log in first', answer(401, 'text/html')],
  ['while the host has a fault', answer(503, 'text/html')],
  ['where a page of the host’s own says that it is being mended', answer(200, 'text/html; charset=utf-8')],
])('stays %s', async (_, given) => {
  expect(await openedWith(given)).toEqual([]);
});

test.each([404, 410])('leaves where the site has none any more: %i', async (status) => {
  expect(await openedWith(answer(status, 'text/html'))).toEqual([
    'unregister',
    'delete panel-ledger-bench abc',
    'open in asked',
  ]);
});

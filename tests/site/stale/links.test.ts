import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { loadLedger } from '../../../src/ledger/load-ledger.ts';
import { linkAnswers } from '../../../src/site/stale/link-answers.ts';
import { outsideLinks, staleLinks } from '../../../src/site/stale/outside-links.ts';
import { staleLead } from '../../../src/site/stale/stale-words.ts';
import { TODAY, tinyContent } from '../../support/content-folder.ts';

let server: Server;
let top: string;
const asked: string[] = [];
let atOnce = 0;
let mostAtOnce = 0;

beforeAll(async () => {
  server = createServer((request, response) => {
    const { method = '', url = '' } = request;
    asked.push(`${method} ${url}`);
    mostAtOnce = Math.max(mostAtOnce, ++atOnce);
    const end = (status: number, headers: Record<string, string> = {}) =>
      setTimeout(() => {
        atOnce--;
        response.writeHead(status, headers).end();
      }, 20);
    if (url === '/slow') {
      atOnce--;
      return;
    }
    if (url === '/gone') return end(404);
    if (url === '/get-alone') return end(method === 'HEAD' ? 405 : 200);
    if (url === '/shy') return end(403);
    if (url === '/old') return end(301, { location: '/new' });
    if (url === '/no-slash') return end(301, { location: '/no-slash/' });
    return end(200);
  });
  await new Promise<void>((resolve) => server.listen(0, resolve));
  top = `http://localhost:${(server.address() as AddressInfo).port}`;
});
afterAll(() => {
  server.closeAllConnections();
  server.close();
});

test('by HEAD, then by GET; each address once, four at a time', async () => {
  const paths = ['there', 'gone', 'get-alone', 'shy', 'old', 'no-slash', 'a', 'b', 'c'];
  const told: number[] = [];
  const answers = await linkAnswers(
    [...paths, 'there'].map((it) => `${top}/${it}`),
    // Long, for a busy machine.
    { longest: 60, onAnswer: (done) => told.push(done) },
  );
  const of = (path: string) => answers.get(`${top}/${path}`);
  expect(of('there')).toEqual({ kind: 'there' });
  expect(of('gone')).toEqual({ kind: 'gone', fault: 'answers with 404 Not Found' });
  expect(of('get-alone')).toEqual({ kind: 'there' });
  expect(of('shy')).toEqual({ kind: 'gone', fault: 'answers with 403 Forbidden, which may be to programs alone' });
  expect(of('old')).toEqual({ kind: 'moved', to: `${top}/new` });
  expect(of('no-slash')).toEqual({ kind: 'there' });
  expect(asked.filter((it) => it.endsWith('/there'))).toEqual(['HEAD /there']);
  expect(asked.filter((it) => it.endsWith('/gone'))).toEqual(['HEAD /gone', 'GET /gone']);
  expect(mostAtOnce).toBeLessThanOrEqual(4);
  expect(told).toEqual(paths.map((_, i) => i + 1));
});

test('what does not answer is asked once, and waited for no longer than was said', async () => {
  const answers = await linkAnswers([`${top}/slow`], { longest: 0.2 });
  expect(answers.get(`${top}/slow`)).toEqual({ kind: 'gone', fault: 'does not answer within 0.2 s' });
  expect(asked.filter((it) => it.endsWith('/slow'))).toEqual(['HEAD /slow']);
});

test('a machine that refuses, a name that nobody has', async () => {
  const closed = createServer();
  await new Promise<void>((resolve) => closed.listen(0, resolve));
  const { port } = closed.address() as AddressInfo;
  await new Promise((resolve) => closed.close(resolve));
  const answers = await linkAnswers([`http://127.0.0.1:${port}/`]);
  expect([...answers.values()]).toEqual([{ kind: 'gone', fault: 'is at a machine that refuses to answer' }]);
});

test('links of newest prices, makers and texts, each with its place', () => {
  const content = tinyContent();
  try {
    process.env.LEDGER_TODAY = TODAY;
    content.write(
      'panels/plover/index.md',
      `${content.read('panels/plover/index.md')}\n\nSee [a shop](https://shop.example/plover), or [us](/cautions/).\n`,
    );
    const links = outsideLinks(loadLedger({ folder: content.folder }));
    const file = (path: string) => `${content.folder}/${path}`;
    const placed = links.map((it) => [it.address, it.source.file, it.line]);
    const lineOf = (text: string) => content.lineOf('panels/plover/index.md', text);
    expect(placed).toContainEqual([
      'https://wrackline.example/plover',
      file('panels/plover/index.md'),
      lineOf('link: https://wrackline.example/plover'),
    ]);
    expect(placed).toContainEqual([
      'https://shop.example/plover',
      file('panels/plover/index.md'),
      lineOf('See [a shop]'),
    ]);
    expect(links.map((it) => it.address)).not.toContain('/cautions/');
    const answers = new Map(links.map((it) => [it.address, { kind: 'gone', fault: 'answers with 404' } as const]));
    const items = staleLinks(links, answers);
    expect(items.map((it) => it.line)).toEqual(links.map((it) => it.line));
    expect(items[0]).toMatchObject({ kind: 'link', state: 'past', text: expect.stringMatching(/ answers with 404$/) });
    expect(staleLead(items, { lookedAt: answers.size })).toContain('None answered: this machine may be offline.');
    expect(staleLead(items.slice(1), { lookedAt: answers.size })).not.toContain('offline');
  } finally {
    delete process.env.LEDGER_TODAY;
    content.delete();
  }
});

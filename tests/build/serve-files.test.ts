import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { serveFiles } from '../../src/build/serve-files.ts';
import type { PublishedFile } from '../../src/site/export/published-file.ts';

let files: PublishedFile[] | Error;
let server: Server;
let site: string;
beforeEach(async () => {
  const serve = serveFiles(() => {
    if (files instanceof Error) throw files;
    return files;
  });
  server = createServer((request, response) =>
    serve(request, response, (error) => response.writeHead(error ? 500 : 404).end(String(error ?? 'next'))),
  );
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  site = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
});
afterEach(() => {
  server.close();
});

test('gives a file as it stands at the request, with its type', async () => {
  files = [{ path: 'data/a.csv', type: 'text/csv', text: () => ['µ,', '1\n'] }];
  const answer = await fetch(`${site}/data/a.csv?again=1`);
  expect(answer.headers.get('content-type')).toBe('text/csv; charset=utf-8');
  expect(await answer.text()).toBe('µ,1\n');
  files = [{ path: 'data/a.csv', type: 'text/csv', text: () => ['2\n'] }];
  expect(await (await fetch(`${site}/data/a.csv`)).text()).toBe('2\n');
});

test.each(['/', '/data/', '/data/b.csv', '/a.csv', '/panels/data/a.csv'])(
  'leaves %s to the next in line',
  async (path) => {
    files = [{ path: 'data/a.csv', type: 'text/csv', text: () => ['x'] }];
    const answer = await fetch(site + path);
    expect([answer.status, await answer.text()]).toEqual([404, 'next']);
  },
);

test('hands on why the guide can’t be worked out', async () => {
  files = new Error('content/guide.yaml:3');
  const answer = await fetch(`${site}/data/a.csv`);
  expect([answer.status, await answer.text()]).toEqual([500, 'Error: content/guide.yaml:3']);
});

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { servePhotos } from '../../src/build/photos/serve-photos.ts';

const THERE = '/photos/tern/front-0-320.avif';

let folder: string;
let server: Server;
let site: string;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'served-'));
  writeFileSync(join(folder, 'a'), 'bytes');
  const serve = servePhotos(async (address) => {
    if (address.includes('broken')) throw new Error('can’t be decoded');
    return address === THERE ? join(folder, 'a') : undefined;
  });
  server = createServer((request, response) =>
    serve(request, response, (error) => response.writeHead(error ? 500 : 404).end(String(error ?? 'next'))),
  );
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  site = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
});
afterEach(() => {
  server.close();
  rmSync(folder, { recursive: true, force: true });
});

test('gives a picture with its type', async () => {
  const answer = await fetch(`${site}${THERE}?again=1`);
  expect([answer.headers.get('content-type'), await answer.text()]).toEqual(['image/avif', 'bytes']);
});

test.each(['/', '/photos/', '/photos/tern/other-0-320.avif', '/photos/tern/front.gif', `/other${THERE}`])(
  'leaves %s to the next in line',
  async (path) => {
    const answer = await fetch(site + path);
    expect([answer.status, await answer.text()]).toEqual([404, 'next']);
  },
);

test('hands a fault on', async () => {
  const answer = await fetch(`${site}/photos/tern/broken-0-320.avif`);
  expect([answer.status, await answer.text()]).toEqual([500, 'Error: can’t be decoded']);
});

import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { buildLedger } from '../../../src/ledger/build-ledger.ts';
import { linkWarnings } from '../../../src/site/warnings/link-warnings.ts';
import { type ContentFolder, TODAY, tinyContent } from '../../support/content-folder.ts';

let content: ContentFolder;
let server: Server;
beforeEach(async () => {
  content = tinyContent();
  server = createServer((request, response) => {
    response.statusCode = request.url === '/there' ? 200 : 404;
    response.end();
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
});
afterEach(() => {
  server.close();
  content.delete();
});

test('a link to another site that is gone is a doubt at its line, one that answers is none', async () => {
  const top = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  const file = 'panels/plover/index.md';
  content.write(file, `${content.read(file)}\n[a](${top}/there)\n\n[b](${top}/gone)\n`);
  const read = content.content();
  const found = (await linkWarnings({ content: read, ledger: buildLedger(read, { today: TODAY }) })).filter((it) =>
    it.text.includes(top),
  );
  expect(found).toMatchObject([{ severity: 'doubt', check: 'outside-link', line: content.lineOf(file, '[b]') }]);
  expect(found[0]?.text).toContain(`${top}/gone`);
  expect(found[0]?.file).toContain(file);
});

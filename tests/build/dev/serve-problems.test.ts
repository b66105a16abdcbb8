import type { IncomingMessage, ServerResponse } from 'node:http';
import { expect, test, vi } from 'vitest';
import { serveProblems } from '../../../src/build/dev/serve-problems.ts';
import type { Problem } from '../../../src/content/schema/problem.ts';

const PROBLEM: Problem = { file: 'content/guide.yaml', line: 3, field: 'title', found: '<b>', wanted: 'a text' };

/** What is answered to a request, or that it was left to the next. */
async function answer(url: string, { problems = [PROBLEM], hasLedger = false, accept = 'text/html' } = {}) {
  const headers: Record<string, string> = {};
  const next = vi.fn();
  const response = {
    statusCode: 200,
    setHeader: (name: string, value: string) => {
      headers[name] = value;
    },
    end: vi.fn(),
  };
  serveProblems({
    state: () => ({ version: '7', problems }),
    hasLedger: () => hasLedger,
    withScripts: async (_address, page) => page.replace('<head>', '<head><!-- scripts -->'),
    script: '/@fs/desk-bar.ts',
    styles: ['/@fs/base.css?direct'],
  })({ url, headers: { accept } } as unknown as IncomingMessage, response as unknown as ServerResponse, next);
  await Promise.resolve();
  await Promise.resolve();
  return {
    next: next.mock.calls.length > 0,
    body: response.end.mock.calls[0]?.[0],
    headers,
    status: response.statusCode,
  };
}

test('says how the content stands', async () => {
  const { body, next } = await answer('/desk/content.json', { hasLedger: true });
  expect(next).toBe(false);
  expect(JSON.parse(body)).toEqual({ version: '7', problems: [PROBLEM] });
});

test('notes the version beside every page, and leaves it to the next', async () => {
  expect(await answer('/panels/plover/', { hasLedger: true })).toMatchObject({
    next: true,
    headers: { 'server-timing': 'content;desc="7"' },
  });
});

test('while no page can be made, answers pages with what is wrong, as text, and with the scripts', async () => {
  const { body, status, next } = await answer('/panels/plover/');
  expect([status, next]).toEqual([500, false]);
  expect(body).toContain('content/guide.yaml:3 title');
  expect(body).toContain('found: &lt;b&gt;');
  expect(body).toContain('<!-- scripts -->');
  expect(body).toContain('src="/@fs/desk-bar.ts"');
});

test('leaves scripts, styles and the server’s own addresses alone', async () => {
  expect((await answer('/@vite/client')).next).toBe(true);
  expect((await answer('/icon.svg', { accept: 'image/svg+xml' })).next).toBe(true);
});

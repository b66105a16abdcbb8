/** The demonstration behind a real nginx, with the file that `recipe nginx` prints: headers, and a clean console. */
import { existsSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { FRAMED_BY_NONE } from '../../src/site/serving/serving-rules.ts';
import { CONTENT_POLICY } from '../../src/site/shared/content-policy.ts';
import { DEMO_SITE } from '../support/demo-folder.ts';
import { serveNginx } from '../support/serve-nginx.ts';
import { type OpenSite, openServed } from './browser.ts';
import { walk } from './page-kinds.ts';
import { FILES, panelFiles } from './site.ts';

const moved = panelFiles('published').find((it) => it.data.formerly !== undefined);
const FORMERLY = moved?.data.formerly?.[0] ?? '';
const SLUG = moved?.slug ?? '';
const OTHER = 'kelpwright-gannet';

let site: OpenSite;
beforeAll(async () => {
  site = await openServed(await serveNginx(DEMO_SITE, 'https://panels.curlewstrand.example'));
});
afterAll(() => site.close());

/** What is answered, without following to another address. */
const answer = (path: string, method = 'HEAD') =>
  fetch(site.origin + path, { method, redirect: 'manual', headers: { 'accept-encoding': 'gzip' } });

const file = (start: string, ending: string) =>
  FILES.find((it) => it.startsWith(start) && it.endsWith(ending)) ?? `${start}* is not there`;

describe('headers', () => {
  test.each(['/', '/bench/sheet/', '/data/panels.json', '/_headers', file('/_astro/', '.js')])(
    '%s forbids what is not the guide’s own, frames too',
    async (path) => {
      const { headers } = await answer(path);
      expect(headers.get('content-security-policy')).toBe(FRAMED_BY_NONE);
      expect(FRAMED_BY_NONE).toBe(`${CONTENT_POLICY}; frame-ancestors 'none'`);
      expect(headers.get('x-content-type-options')).toBe('nosniff');
      expect(headers.get('referrer-policy')).toBe('strict-origin-when-cross-origin');
      expect(headers.get('permissions-policy')).toMatch(
        /camera=\(self\).*geolocation=\(\).*hid=\(self\).*serial=\(self\)/,
      );
      expect(headers.get('server')).toBe('nginx');
    },
  );

  test.each([
    ['/', 200, 'no-cache'],
    [`/panels/${SLUG}/`, 200, 'no-cache'],
    ['/data/panels.json', 200, 'no-cache'],
    ['/pagefind/pagefind.js', 200, 'no-cache'],
    ['/no-such-page/', 404, 'no-cache'],
    ['/_astro/gone.js', 404, 'no-cache'],
    [file('/_astro/', '.css'), 200, 'public, max-age=31536000, immutable'],
    [file('/photos/', '.webp'), 200, 'public, max-age=31536000, immutable'],
    [file('/pagefind/fragment/', ''), 200, 'public, max-age=31536000, immutable'],
  ])('%s: %i, %s', async (path, status, cache) => {
    const { status: answered, headers } = await answer(path);
    expect([answered, headers.get('cache-control')]).toEqual([status, cache]);
  });

  test.each([
    ['/', 'text/html; charset=utf-8', null],
    ['/data/panels.csv', 'text/csv; charset=utf-8', '*'],
    ['/data/panels.json', 'application/json; charset=utf-8', '*'],
    ['/sitemap.xml', 'text/xml; charset=utf-8', null],
    ['/icon.svg', 'image/svg+xml; charset=utf-8', null],
  ])('%s is %s, and compressed', async (path, type, readers) => {
    const { headers } = await answer(path, 'GET');
    expect(headers.get('content-type')).toBe(type);
    expect(headers.get('content-encoding')).toBe('gzip');
    expect(headers.get('access-control-allow-origin')).toBe(readers);
  });
});

test('an address without its slash leads to the page, under whatever name readers came by', async () => {
  const { status, headers } = await answer('/methods/rank');
  expect([status, headers.get('location')]).toEqual([301, '/methods/rank/']);
});

test('what is for other hosts stays unseen', async () => {
  expect(existsSync(`${DEMO_SITE}/_headers`)).toBe(true);
  for (const path of ['/_headers', '/.git/config']) expect((await answer(path)).status, path).toBe(404);
});

test('every kind of page opens and works under it, and nothing is complained of', () =>
  walk(site, { base: '', slugs: [SLUG, OTHER], formerly: FORMERLY }));

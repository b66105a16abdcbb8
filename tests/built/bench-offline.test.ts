/** The bench without a network: its worker, from the first visit over a newer build to its end. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { keptFiles } from '../../src/build/bench-worker-file.ts';
import type { OfflineState } from '../../src/site/bench/browser/bench-offline.ts';
import { DEMO_SITE } from '../support/demo-folder.ts';
import { type ServedBench, serveBench } from '../support/serve-bench.ts';
import { FILES, PAGES } from './site.ts';
import { type WorkerBrowser, workerBrowser } from './worker-browser.ts';

declare global {
  var states: OfflineState[];
  var change: () => void;
  var check: () => Promise<void>;
}

describe('the worker of the built site', () => {
  const { files = {} } = keptFiles(DEMO_SITE) ?? {};

  test('keeps every page of the bench and what they load, and no other page', () => {
    const pages = Object.keys(files).filter((it) => it.endsWith('/'));
    expect(pages).toEqual(PAGES.map((it) => it.address).filter((it) => it.startsWith('/bench/')));
    expect(FILES).toContain('/bench/worker.js');
    const kept = new Set(Object.keys(files));
    for (const { html } of PAGES.filter((it) => it.address.startsWith('/bench/'))) {
      const loaded = [...html.matchAll(/<(?:script|link)[^>]* (?:src|href)="(\/[^"]+\.\w+)"/g)].map((it) => it[1]);
      expect(loaded.length).toBeGreaterThan(3);
      for (const it of loaded) expect(kept).toContain(it);
    }
  });

  test('threads lie where the worker reaches them: a browser goes by the address of their own script', () => {
    for (const it of Object.keys(files).filter((address) => address.endsWith('.js'))) {
      const text = readFileSync(join(DEMO_SITE, it), 'utf8');
      for (const [, thread = ''] of text.matchAll(/new Worker\((?:new URL\()?["'`]([^"'`]+)/g)) {
        expect(thread).toMatch(/^\/bench\//);
        expect(Object.keys(files)).toContain(thread);
      }
    }
  });
});

describe('in a browser', () => {
  let browser: WorkerBrowser;
  let context: BrowserContext;
  let site: ServedBench;
  beforeAll(async () => {
    browser = await workerBrowser();
  });
  afterAll(() => browser.close());
  beforeEach(async () => {
    [site, context] = await Promise.all([serveBench(), browser.newContext()]);
  });
  afterEach(async () => {
    await context.close();
    await site[Symbol.asyncDispose]();
  });

  /** Opens the pad, which keeps itself from then on. */
  async function opened(version: string, page?: Page): Promise<Page> {
    const there = page ?? (await context.newPage());
    await there.goto(`${site.origin}/bench/?run=a-run`);
    await follow(there, version);
    return there;
  }
  const follow = (page: Page, version: string) =>
    page.evaluate((shown) => {
      globalThis.states = [];
      const { change, check } = globalThis.bench.keepOffline(shown, (it: OfflineState) => globalThis.states.push(it));
      Object.assign(globalThis, { change, check });
    }, version);
  const state = (page: Page) => expect.poll(() => page.evaluate(() => globalThis.states.at(-1)));
  const heading = (page: Page) => page.locator('h1').textContent();

  test('works with the network off after the first visit, and leaves other pages alone', async () => {
    const page = await opened('one');
    await state(page).toBe('kept');
    const sheet = await context.newPage();
    await sheet.goto(`${site.origin}/`);
    expect(await sheet.evaluate(() => navigator.serviceWorker.controller)).toBeNull();

    await site.unplug();
    await page.goto(`${site.origin}/bench/?run=another`);
    expect(await heading(page)).toBe('Bench one');
    expect(await page.evaluate(async () => (await fetch('/data/bench.json')).json())).toEqual({ version: 'one' });
    await follow(page, 'one');
    await state(page).toBe('kept');
    // The run sheet was never opened, and is there all the same, with styles and typefaces.
    await sheet.goto(`${site.origin}/bench/sheet/?width=20 cm&height=60 cm`);
    expect(await heading(sheet)).toBe('Run sheet');
    expect(await sheet.locator('[data-sheet-points] tr').count()).toBe(9);
    const faces = await sheet.evaluate(async () => {
      await document.fonts.ready;
      return [...document.fonts].filter((it) => it.status === 'loaded').length;
    });
    expect(faces).toBeGreaterThan(0);
    await expect(sheet.goto(`${site.origin}/`)).rejects.toThrow(/ERR_CONNECTION_REFUSED/);
  });

  test('a newer build waits until it is asked for, and then all windows have it', async () => {
    const [page, other] = [await opened('one'), await context.newPage()];
    await state(page).toBe('kept');
    await opened('one', other);
    await state(other).toBe('kept');

    site.publish('two');
    await page.evaluate(() => globalThis.check());
    await state(page).toBe('newer');
    await state(other).toBe('newer');
    // Until then all is of the old build, in a window that is loaded again as well.
    await page.reload();
    expect(await heading(page)).toBe('Bench one');
    expect(await page.evaluate(async () => (await fetch('/data/bench.json')).json())).toEqual({ version: 'one' });
    await follow(page, 'one');
    await state(page).toBe('newer');

    await page.evaluate(() => globalThis.change());
    for (const it of [page, other]) {
      await expect.poll(() => heading(it).catch(() => '')).toBe('Bench two');
      expect(await it.evaluate(async () => (await fetch('/data/bench.json')).json())).toEqual({ version: 'two' });
    }
    expect(await page.evaluate(() => caches.keys())).toHaveLength(1);
    await site.unplug();
    await page.reload();
    expect(await heading(page)).toBe('Bench two');
  });

  test('a build that is being replaced is not kept by halves', async () => {
    const page = await context.newPage();
    // What this host sends is not what the build has written.
    await context.route('**/data/bench.json', (route) => route.fulfill({ json: { version: 'half' } }));
    await page.goto(`${site.origin}/bench/`);
    await follow(page, 'one');
    await state(page).toBe('failed');
    expect(await page.evaluate(() => caches.keys())).toEqual([]);
    // As while the tester writes: a site without a worker has nothing that could fail.
    site.withdraw('worker.js');
    await page.reload();
    await follow(page, 'one');
    await state(page).toBe('none');
  });

  test('takes itself away where the site has none any more', async () => {
    const page = await opened('one');
    await state(page).toBe('kept');
    site.withdraw();
    await page.reload();
    await expect.poll(() => heading(page).catch(() => '')).toBe('Not here');
    expect(await page.evaluate(() => caches.keys())).toEqual([]);
    expect(await page.evaluate(() => navigator.serviceWorker.getRegistrations())).toEqual([]);
  });
});

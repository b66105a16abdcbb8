import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { PAGE_TYPES, paintPages } from '../bench/paint-pages.ts';
import { DEMO_SITE } from '../support/demo-folder.ts';
import { type OpenSite, openSite, PHONE } from './browser.ts';
import { layoutShift, STILL } from './layout-shift.ts';

let site: OpenSite;
beforeAll(async () => {
  site = await openSite();
});
afterAll(() => site.close());

/** How the last row of the ranking is laid out, and how high it is. */
const lastRow = (page: Page) =>
  page
    .locator('#ranking tr[data-f]')
    .last()
    .evaluate((it) => ({ laid: getComputedStyle(it).contentVisibility, height: it.getBoundingClientRect().height }));

test('rows that a phone does not show yet wait until it is idle, in about the room that they take', async () => {
  await using opened = await site.open('/404.html', { viewport: PHONE });
  const { page } = opened;
  let goOn = () => {};
  const held = new Promise<void>((go) => {
    goOn = go;
  });
  await page.route('**/_astro/*.js', async (route) => {
    await held;
    await route.continue();
  });
  await page.goto(site.origin, { waitUntil: 'commit' });
  await page.locator('footer').waitFor({ state: 'attached' });
  await expect.poll(async () => (await lastRow(page)).laid).toBe('auto');
  const before = await lastRow(page);
  goOn();
  await expect.poll(async () => (await lastRow(page)).laid).toBe('visible');
  expect(await page.locator('#ranking tr[data-f]:not(.laid)').count()).toBe(0);
  expect(Math.abs((await lastRow(page)).height / before.height - 1)).toBeLessThan(0.35);
});

test('without a script every row is laid out at once', async () => {
  await using opened = await site.open('/', { viewport: PHONE, javaScriptEnabled: false });
  expect((await lastRow(opened.page)).laid).toBe('visible');
});

/** Long after the first paint, and short enough to wait for, ms. */
const LATE = 400;

test('the bench times every kind of page', () => {
  expect(paintPages(DEMO_SITE).map((it) => it.name)).toEqual(PAGE_TYPES);
});

// Pages that a script fills or adds to; the others have nothing that it could move.
test.each(['/search/', '/compare/', '/compare/?with=kelpwright-gannet,quennick-tope', '/emitted/', '/bench/'])(
  '%s moves nothing when its scripts come late',
  async (address) => {
    await using opened = await site.open('/404.html', { viewport: PHONE });
    const { page } = opened;
    let held = 0;
    await page.route('**/_astro/*.js', async (route) => {
      held += 1;
      await new Promise((go) => setTimeout(go, LATE));
      await route.continue();
    });
    await page.goto(site.origin + address, { waitUntil: 'networkidle' });
    expect(held).toBeGreaterThan(0);
    expect(await layoutShift(page)).toBeLessThan(STILL);
  },
);

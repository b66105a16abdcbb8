import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { DESK, NARROWEST, type OpenSite, openSite, PHONE } from './browser.ts';

/** A window of 1440 by 900 at 400 %. */
const ZOOMED = { width: 360, height: 225 };
const WAYS = ['Guide', 'Panels', 'Compare', 'Plan', 'Methods', 'Instruments', 'Cautions', 'Search'];

let site: OpenSite;
beforeAll(async () => {
  site = await openSite();
});
afterAll(() => site.close());

const waysInSight = async (page: Page) =>
  (await page.locator('.masthead nav a').all()).reduce<Promise<string[]>>(
    async (them, it) => [...(await them), ...((await it.isVisible()) ? [(await it.textContent()) ?? ''] : [])],
    Promise.resolve([]),
  );

describe('the masthead', () => {
  test.each([
    [NARROWEST, 44],
    [ZOOMED, 21],
    [PHONE, 44],
    [DESK, 44],
  ])('at %o is one line of %i pixels, and scrolls away', async (viewport, pixels) => {
    await using opened = await site.open('/', { viewport });
    const { page } = opened;
    const { height, position } = await page.locator('.masthead').evaluate((it) => ({
      height: it.clientHeight,
      position: getComputedStyle(it).position,
    }));
    expect(height).toBe(pixels);
    if (viewport === ZOOMED) expect(height).toBeLessThanOrEqual(viewport.height / 10 - 1);
    expect(['static', 'relative']).toContain(position);
    const lines = await page.locator('.masthead .title').evaluate((it) => {
      const range = document.createRange();
      range.selectNodeContents(it);
      return new Set([...range.getClientRects()].map((box) => box.top)).size;
    });
    expect(lines).toBe(1);
  });

  test('has six ways on in its line on a desk, and the foot has the others', async () => {
    await using opened = await site.open('/cautions/', { viewport: DESK });
    const { page } = opened;
    expect(await waysInSight(page)).toEqual(['Guide', 'Compare', 'Plan', 'Methods', 'Cautions', 'Search']);
    expect(await page.locator('.masthead summary').isVisible()).toBe(false);
    expect(await page.locator('.masthead a[aria-current]').textContent()).toBe('Cautions');
    for (const name of ['Panels', 'Instruments']) {
      expect(await page.locator('.foot').getByRole('link', { name, exact: true }).isVisible()).toBe(true);
    }
  });

  test.each([true, false])('has all of them in the menu of a phone, with scripts: %s', async (javaScriptEnabled) => {
    await using opened = await site.open('/', { viewport: PHONE, javaScriptEnabled });
    const { page, complaints } = opened;
    expect(await waysInSight(page)).toEqual([]);
    // By the keyboard: past the skip link and the guide's name.
    for (let i = 0; i < 3; i += 1) await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    expect(await waysInSight(page)).toEqual(WAYS);
    for (const target of await page.locator('.masthead summary, .masthead nav a').all()) {
      const box = await target.boundingBox();
      expect(Math.min(box?.height ?? 0, box?.width ?? 0)).toBeGreaterThanOrEqual(44);
    }
    await page.locator('.masthead summary').click();
    expect(await waysInSight(page)).toEqual([]);
    expect(complaints).toEqual([]);
  });

  test.each([
    ['/', DESK],
    ['/', PHONE],
    ['/plan/', DESK],
  ])('is behind after twelve stops of the keyboard at most: %s at %o', async (address, viewport) => {
    await using opened = await site.open(address, { viewport });
    const { page } = opened;
    let stops = 0;
    const inMain = () => page.evaluate(() => document.activeElement?.closest('main') !== null);
    do {
      await page.keyboard.press('Tab');
      stops += 1;
    } while (stops < 30 && !(await inMain()));
    expect(stops).toBeGreaterThan(1);
    expect(stops - 1).toBeLessThanOrEqual(12);
  });
});

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

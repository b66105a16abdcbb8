import { readFileSync, statSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { DEMO_SITE } from '../support/demo-folder.ts';
import { DESK, type OpenSite, openSite, PHONE } from './browser.ts';
import { layoutShift, STILL } from './layout-shift.ts';
import { attribute, FILES, PAGES } from './site.ts';

const SANS = '@fontsource-variable/source-sans-3/files/source-sans-3-latin-wght-normal.woff2';
const PANEL = '/panels/kelpwright-gannet/';
const LOOKED_AT = ['/', PANEL, `${PANEL}methodology/`];

let site: OpenSite;
beforeAll(async () => {
  site = await openSite();
});
afterAll(() => site.close());

/** Neither an old address, nor a small card that stands in other writers' pages. */
const isPage = ({ address, document }: (typeof PAGES)[number]) =>
  !document.querySelector('[http-equiv="refresh"]') && !/^\/cards\/./.test(address);

test('weigh 85 KB at most, and one of them is asked for before the style sheets', () => {
  const fonts = FILES.filter((it) => it.endsWith('.woff2') && it.startsWith('/_astro/'));
  expect(fonts.length).toBeGreaterThan(1);
  const bytes = fonts.map((it) => statSync(join(DEMO_SITE, it)).size).reduce((sum, it) => sum + it, 0);
  expect(bytes).toBeLessThanOrEqual(85_000);
  const sans = readFileSync(createRequire(import.meta.url).resolve(SANS));
  const own = fonts.filter((it) => sans.equals(readFileSync(join(DEMO_SITE, it))));
  expect(own).toHaveLength(1);
  for (const { address, document } of PAGES.filter(isPage)) {
    const asked = document.querySelectorAll('link[rel="preload"]').map((it) => attribute(it, 'href'));
    expect(asked, address).toEqual(own);
  }
});

/** Families of the site's own faces that have come in, without those that stand in for them. */
const arrived = (page: Page) =>
  page.evaluate(() =>
    [...document.fonts]
      .filter((it) => it.status === 'loaded')
      .map((it) => it.family.replaceAll('"', ''))
      .filter((it) => !it.endsWith('fitted')),
  );

describe.each(LOOKED_AT)('%s', (address) => {
  test.each([PHONE, DESK])('moves nothing at %o when they come late', async (viewport) => {
    await using opened = await site.open('/404.html', { viewport });
    const { page, complaints } = opened;
    let held = 0;
    await page.route('**/*.woff2', async (route) => {
      held += 1;
      await new Promise((go) => setTimeout(go, 1000));
      await route.continue();
    });
    // Fresh from the network, not from what the page before has left.
    const session = await page.context().newCDPSession(page);
    await session.send('Network.setCacheDisabled', { cacheDisabled: true });
    await page.goto(new URL(address, page.url()).href);
    await expect.poll(() => arrived(page)).toEqual(expect.arrayContaining(['Source Serif 4']));
    await page.waitForTimeout(300);
    const shift = await layoutShift(page);
    expect(held).toBeGreaterThan(1);
    expect(shift).toBeLessThan(STILL);
    expect(complaints).toEqual([]);
  });
});

test('figures stand in columns: every digit is as wide as the others', async () => {
  await using opened = await site.open('/');
  const { page } = opened;
  for (const selector of ['main p', 'main h1', 'main td']) {
    const widths = await page
      .locator(selector)
      .first()
      .evaluate((element) =>
        [...'0123456789'].map((digit) => {
          const probe = document.createElement('span');
          probe.textContent = digit.repeat(20);
          probe.style.position = 'absolute';
          probe.style.whiteSpace = 'nowrap';
          element.append(probe);
          const { width } = probe.getBoundingClientRect();
          probe.remove();
          return Math.round(width);
        }),
      );
    expect(new Set(widths).size, `${selector}: ${widths}`).toBe(1);
  }
});

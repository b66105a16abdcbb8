/** One address of each kind of page, and the tools at work: wherever and by whatever a guide is served. */
import { expect } from 'vitest';
import { FIXED_PAGES } from '../../src/content/rules/site-addresses.ts';
import type { OpenSite } from './browser.ts';

/** What a guide has to have for a walk: two ranked panels, the first with a former name. */
export interface Walked {
  /** Path of the guide on its host, without a slash at its end. */
  base: string;
  slugs: readonly [string, string];
  formerly: string;
}

/** Pages that are opened as they are; those with tools are tried below. */
const PLAIN = [
  ...FIXED_PAGES.filter((it) => !['/compare/', '/plan/', '/search/', '/plots/'].includes(it)),
  '/methods/optical-power/',
];

/** Opens a page of each kind, and uses each tool: nothing may be missing, nothing be complained of. */
export async function walk(site: OpenSite, { base, slugs: [one, other], formerly }: Walked): Promise<void> {
  await using opened = await site.open(`${base}/panels/${one}/`);
  const { page, complaints } = opened;
  const go = (path: string) => page.goto(site.origin + base + path);
  const at = () => page.url().slice(site.origin.length);
  /** A tool has done its work: all that it leads to lies where the guide does. */
  const leadsRight = async () => {
    await page.waitForLoadState('networkidle');
    const addresses = await page
      .locator('a[href^="/"]')
      .evaluateAll((links) => links.map((it) => it.getAttribute('href') ?? ''));
    expect(addresses.length).toBeGreaterThan(10);
    const isRight = (it: string) => it.startsWith(`${base}/`) && (base === '' || !it.startsWith(base + base));
    expect(addresses.filter((it) => !isRight(it))).toEqual([]);
  };

  for (const path of [...PLAIN, `/panels/${one}/methodology/#optical-power`]) {
    const response = await go(path);
    expect(response?.status(), path).toBe(200);
    expect(await page.locator('h1').count(), path).toBe(1);
  }

  await go(`/compare/?with=${one},${other}`);
  await page.locator('[data-compare-status]', { hasText: '2 panels side by side' }).waitFor({ state: 'attached' });
  await leadsRight();

  await go(`/plan/?panel=${one}&cm=30&exposure=12`);
  await page.locator('.plan-on a').first().waitFor();
  await leadsRight();
  await page.locator('.plan-on a').first().click();
  await page.waitForURL(`**${base}/panels/${one}/`);

  await go('/search/?q=flicker');
  const found = page.locator(`#found a[href^="${base}/methods/"]`).first();
  await found.waitFor();
  await leadsRight();
  await found.click();
  await page.locator('h1').waitFor();
  expect(at().startsWith(`${base}/methods/`), at()).toBe(true);

  await go('/plots/');
  await page.locator('canvas').nth(2).waitFor();
  await page.locator('[data-plot=power-by-price] .points button').first().focus();
  await page.keyboard.press('Enter');
  await leadsRight();

  // The guide's own answer to a sum, and prices of one's own, with marks and links made by its script.
  await go(`/?spend=5000&extra=20&own.${one}=250&own.${other}=300`);
  await leadsRight();

  // An old address leads on, with the part that it named.
  await page.goto(`${site.origin}${base}/panels/${formerly}/#prices`);
  await page.waitForURL(`**${base}/panels/${one}/#prices`);
  expect(complaints).toEqual([]);

  const missing = await go('/panels/no-such-panel/');
  expect(missing?.status()).toBe(404);
  await page.locator('main a', { hasText: 'the guide' }).click();
  await page.waitForURL(`${site.origin}${base}/`);
  expect(complaints.filter((it) => !it.includes('404'))).toEqual([]);
}

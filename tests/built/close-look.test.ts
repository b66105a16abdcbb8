/** The page of a panel's files: its answer, its weight, and the closer look at what is drawn on it. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { DEMO_SITE } from '../support/demo-folder.ts';
import { type OpenSite, openSite, PHONE } from './browser.ts';
import { attribute, pageAt, textOf } from './site.ts';

let site: OpenSite;
beforeAll(async () => {
  site = await openSite();
});
afterAll(() => site.close());

/** KB of HTML. */
const MOST = 65;
/** What each panel's files have brought to light. */
const FAULTS = [
  ['ostrel-vagg', 'A peak at 941 nm', '#spectra-'],
  ['ruddlestone-r150', 'Readings begun 45 min after switching on', '#log-1-'],
  ['quennick-tope', 'A tone at 8.2 kHz', '#clips-'],
] as const;

describe.each(FAULTS)('%s', (slug, fault, anchor) => {
  test('has a page of files within its bound, whose first words are what was found', () => {
    const { html, document } = pageAt(`/panels/${slug}/files/`);
    expect(Buffer.byteLength(html) / 1000).toBeLessThan(MOST);
    const before = textOf(document.querySelector('main')).split(fault)[0] ?? '';
    expect(before.match(/\S*\p{L}\S*/gu)?.length).toBeLessThanOrEqual(10);
    for (const it of document.querySelectorAll('figure[data-closer]')) {
      expect(existsSync(join(DEMO_SITE, attribute(it, 'data-closer')))).toBe(true);
    }
  });

  test('says it within two screens of a phone on its own page, with a link to where it is drawn', async () => {
    await using opened = await site.open(`/panels/${slug}/`, { viewport: PHONE });
    const line = opened.page.locator('.panel-head li', { hasText: fault });
    const box = await line.boundingBox();
    expect((box?.y ?? Number.POSITIVE_INFINITY) + (box?.height ?? 0)).toBeLessThan(2 * PHONE.height);
    const address = (await line.locator('a').first().getAttribute('href')) ?? '';
    expect(address).toContain(`/panels/${slug}/files/${anchor}`);
    expect(pageAt(`/panels/${slug}/files/`).document.querySelector(`#${address.split('#')[1]}`)).not.toBeNull();
  });
});

test('nothing of the closer look is there without a script, nor fetched before it is asked for', async () => {
  expect(pageAt('/panels/ostrel-vagg/files/').document.querySelectorAll('main button').length).toBe(0);
  await using opened = await site.open('/panels/ostrel-vagg/files/');
  await opened.page.locator('.closer').first().waitFor();
  const names = await opened.page.evaluate(() => performance.getEntriesByType('resource').map((it) => it.name));
  expect(names.filter((it) => /chart|close-look|\/plots\//.test(it) && /\.js(on)?$/.test(it))).toEqual([]);
});

test('goes closer, reads on and back by keys, and gives the keyboard back', async () => {
  await using opened = await site.open('/panels/ostrel-vagg/files/', { viewport: PHONE });
  const { page, complaints } = opened;
  const button = page.locator('figure[data-closer*="spectra"] .closer');
  await button.focus();
  await page.keyboard.press('Enter');
  const slider = page.getByRole('slider');
  await expect.poll(() => slider.getAttribute('aria-valuetext')).toBe('661.0 nm: 100 % of the highest');
  const told = () => slider.getAttribute('aria-valuetext');
  await page.keyboard.press('ArrowRight');
  const far = Number.parseFloat((await told()) ?? '') - 661;
  await page.keyboard.press('ArrowLeft');
  expect(await told()).toBe('661.0 nm: 100 % of the highest');
  for (let i = 0; i < 8; i++) await page.keyboard.press('+');
  await page.keyboard.press('ArrowRight');
  // Close by, a press goes from one row of the file to the next.
  expect(await told()).toMatch(/^661\.5 nm: 9\d\.\d % of the highest$/);
  expect(far).toBeGreaterThan(1);
  await page.keyboard.press('0');
  await page.mouse.move(300, 300);
  await expect.poll(told).not.toMatch(/^661/);
  for (const it of await page.locator('.close-look button').all()) {
    expect((await it.boundingBox())?.height).toBeGreaterThanOrEqual(44);
  }
  await page.keyboard.press('Escape');
  await expect.poll(() => page.locator('dialog').count()).toBe(0);
  expect(await button.evaluate((it) => it === document.activeElement)).toBe(true);
  expect(complaints).toEqual([]);
});

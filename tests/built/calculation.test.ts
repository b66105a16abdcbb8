/** The calculation page in a browser: an address opens what it names, paper gets all, an address can be copied. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type OpenSite, openSite } from './browser.ts';
import { panelsJson } from './site.ts';

const retested = panelsJson().panels.find((it) => it.sessions.length > 1);
if (!retested) throw new Error('no panel was tested twice');
const page = `/panels/${retested.slug}/methodology/`;
const [newest, older] = retested.sessions.map((it) => it.date);

let site: OpenSite;
beforeAll(async () => {
  site = await openSite();
});
afterAll(() => site.close());

test.each([
  '#optical-power',
  `#optical-power-${newest}`,
  `#optical-power-${older}`,
  `#capture-${older}`,
  `#mean-irradiance-at-30-cm`,
])('%s opens what it names and brings it into sight', async (anchor) => {
  await using opened = await site.open(`${page}${anchor}`, { reducedMotion: 'reduce' });
  const place = opened.page.locator(`[id="${anchor.slice(1)}"]`);
  expect(await place.isVisible()).toBe(true);
  expect(await place.evaluate((it) => it.closest('details')?.open)).toBe(true);
  const top = await place.evaluate((it) => it.getBoundingClientRect().top);
  expect(top).toBeGreaterThanOrEqual(0);
  expect(top).toBeLessThan(900);
  expect(opened.complaints).toEqual([]);
});

test('only the newest session is open, and its figures are folded', async () => {
  await using opened = await site.open(page);
  expect(await opened.page.locator('details[open]').count()).toBe(0);
  expect(await opened.page.locator(`#session-${newest}`).isVisible()).toBe(true);
  expect(await opened.page.locator('#optical-power > summary').isVisible()).toBe(true);
  expect(await opened.page.locator('#optical-power > p').first().isVisible()).toBe(false);
});

test('a click opens a figure without a script', async () => {
  await using opened = await site.open(page, { javaScriptEnabled: false });
  await opened.page.locator('#optical-power > summary').click();
  expect(await opened.page.locator('#optical-power > p').first().isVisible()).toBe(true);
  expect(await opened.page.locator('button.copy').count()).toBe(0);
  // What a quotation is made of stands there all the same.
  const told = await opened.page.locator('.by', { has: opened.page.locator('#optical-power') }).textContent();
  expect(told).toMatch(
    /^.+, version \d+; derived\s*Optical power at the reference plane [\d.]+ ± [\d.]+ W[\s\S]*95 % [\d.]+ to [\d.]+/,
  );
  const address = opened.page.locator('#optical-power > summary');
  expect(await address.evaluate((it) => getComputedStyle(it, '::after').content)).toContain('#');
  expect(await address.getAttribute('id')).toBe(`optical-power-${newest}`);
  expect(await opened.page.locator('#cite').textContent()).toContain(page);
});

test('paper has all of it', async () => {
  await using opened = await site.open(page, { javaScriptEnabled: false });
  const shown = () =>
    opened.page
      .locator('#optical-power > p, .older .lines > p')
      .evaluateAll((all) => all.map((it) => it.checkVisibility()));
  expect((await shown()).every(Boolean)).toBe(false);
  await opened.page.emulateMedia({ media: 'print' });
  expect((await shown()).every(Boolean)).toBe(true);
});

test('a button copies the lasting address', async () => {
  await using opened = await site.open(`${page}#optical-power`, { permissions: ['clipboard-read', 'clipboard-write'] });
  const link = opened.page.locator('#optical-power a.lasting');
  expect(await link.getAttribute('href')).toBe(`#optical-power-${newest}`);
  await opened.page.locator('#optical-power button.copy').click();
  await opened.page.locator('#optical-power button.copy', { hasText: 'Copied' }).waitFor();
  const copied = await opened.page.evaluate(() => navigator.clipboard.readText());
  expect(copied).toBe(`${site.origin}${page}#optical-power-${newest}`);
  // By the keyboard as well.
  await opened.page.locator('#optical-power button.quote').press('Enter');
  await opened.page.locator('#optical-power button.quote', { hasText: 'Quoted' }).waitFor();
  const quoted = await opened.page.evaluate(() => navigator.clipboard.readText());
  // Panel, figure with its interval, method with its version, day, guide and lasting address.
  expect(quoted).toMatch(
    /^.+: Optical power at the reference plane [\d.]+ ± [\d.]+ W \(95 % [\d.]+ to [\d.]+; method: .+, version \d+; session of \d{4}-\d\d-\d\d\)\. .+, http/,
  );
  expect(quoted.endsWith(copied)).toBe(true);
});

/** Pages that say first what matters, and fold the rest: the cautions and the instruments. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type OpenSite, openSite, PHONE } from './browser.ts';

let site: OpenSite;
beforeAll(async () => {
  site = await openSite();
});
afterAll(() => site.close());

/** Words in sight. */
const words = (text: string) => text.split(/\s+/).filter((it) => /\p{L}/u.test(it)).length;

describe('what is open', () => {
  test.each([
    ['/cautions/', 1100],
    ['/instruments/', 350],
  ])('%s has at most %i words', async (address, most) => {
    await using opened = await site.open(address);
    const [text = ''] = await opened.page.locator('main').allInnerTexts();
    expect(words(text)).toBeGreaterThan(100);
    expect(words(text)).toBeLessThanOrEqual(most);
  });

  test('is of each caution what to do; why comes after it, folded', async () => {
    await using opened = await site.open('/cautions/');
    const parts = await opened.page
      .locator('.acts > *')
      .evaluateAll((all) =>
        all.map((it) => (it.tagName === 'DETAILS' && (it as HTMLDetailsElement).open ? 'OPEN' : it.tagName)),
      );
    expect(parts[0]).toBe('P');
    expect(parts.slice(1).join(' ')).toMatch(/^(?:H2 UL DETAILS ?)+$/);
  });
});

describe('what an address names', () => {
  test.each([
    ['/instruments/#silicon-handheld', 'Resolution'],
    ['/cautions/#sources', 'from memory; read the source before quoting it'],
  ])('%s is opened, in sight, and nothing else', async (address, told) => {
    await using opened = await site.open(address, { viewport: PHONE, reducedMotion: 'reduce' });
    const { page } = opened;
    const open = page.locator('main details[open]');
    await expect.poll(() => open.count()).toBe(1);
    expect(await open.textContent()).toContain(told);
    await expect.poll(async () => (await page.locator(':target').boundingBox())?.y ?? -1).toBeGreaterThanOrEqual(0);
    expect((await page.locator(':target').boundingBox())?.y).toBeLessThan(PHONE.height);
  });

  test('is opened from the page’s own links too', async () => {
    await using opened = await site.open('/instruments/');
    const { page } = opened;
    await page.evaluate(() => {
      location.hash = '#bench-thermopile';
    });
    await expect.poll(() => page.locator('main details[open] h2').allTextContents()).toEqual(['Bench thermopile']);
  });
});

test.each(['/cautions/', '/instruments/'])('%s is printed with all that it folds', async (address) => {
  await using opened = await site.open(address);
  const { page } = opened;
  const folded = page.locator('main details:not(nav *) > :not(summary)').last();
  expect(await folded.isVisible()).toBe(false);
  await page.emulateMedia({ media: 'print' });
  expect(await folded.isVisible()).toBe(true);
  expect((await folded.boundingBox())?.height).toBeGreaterThan(10);
});

test('without a script every fold opens by its own line, and what an address names is open', async () => {
  await using opened = await site.open('/instruments/#three-axis-coil', { javaScriptEnabled: false });
  const { page } = opened;
  expect(await page.getByText('Three crossed coils').isVisible()).toBe(true);
  const other = page.getByText('The one that fits in a coat pocket');
  expect(await other.isVisible()).toBe(false);
  await page.getByText('Silicon handheld').click();
  expect(await other.isVisible()).toBe(true);
});

describe('what is folded', () => {
  test.each([
    '/panels/quennick-tope/',
    '/panels/quennick-tope/files/',
    '/panels/quennick-tope/methodology/',
    '/instruments/',
    '/changes/',
    '/cards/',
  ])('is no wider than a phone once it is opened: %s', async (address) => {
    await using opened = await site.open(address, { viewport: PHONE });
    const { page } = opened;
    const count = await page.locator('main details').evaluateAll((all) => {
      for (const it of all) (it as HTMLDetailsElement).open = true;
      return all.length;
    });
    expect(count).toBeGreaterThan(0);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(PHONE.width);
  });
});

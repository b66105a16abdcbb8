import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type OpenSite, openSite } from './browser.ts';
import { currentValue, panelsJson } from './site.ts';

const data = panelsJson();
const slug = 'fennimarsh-reed';
const figure = (metric: string) => currentValue(data, slug, metric);

let site: OpenSite;
beforeAll(async () => {
  site = await openSite();
});
afterAll(() => site.close());

describe('units that the reader prefers', () => {
  test('are shown at once, kept over pages without a cookie, and taken back', async () => {
    await using opened = await site.open(`/panels/${slug}/`);
    const { page, complaints } = opened;
    const seen = async (metric: string) =>
      (await page.locator(`a[href$="#${metric}"]`).first().allInnerTexts())[0] ?? '';
    expect(Number.parseFloat(await seen('magnetic-field-on'))).toBeCloseTo(figure('magnetic-field-on'), 2);
    expect(await seen('magnetic-field-on')).toMatch(/ µT$/);
    await page.getByRole('radio', { name: 'milligauss' }).check();
    expect(Number.parseFloat(await seen('magnetic-field-on'))).toBeCloseTo(10 * figure('magnetic-field-on'), 1);
    expect(await seen('magnetic-field-on')).toMatch(/ mG$/);
    const size = page.locator('.to-scale [data-in]').first();
    const inCm = await size.textContent();
    expect(inCm).toMatch(/ cm$/);
    await page.getByRole('radio', { name: 'inches' }).check();
    expect(await size.textContent()).toMatch(/ in$/);
    await page.getByRole('radio', { name: 'centimetres' }).check();
    expect(await size.textContent()).toBe(inCm);
    await page.getByRole('radio', { name: 'inches' }).check();
    expect(Number.parseFloat(await seen('led-area'))).toBeCloseTo(figure('led-area') / 2.54 ** 2, 0);
    expect(await seen('led-area')).toMatch(/ in²$/);
    await page.getByRole('radio', { name: 'as priced' }).check();
    // The guide's rate is 1.15 EUR for 1 GBP.
    expect(await seen('real-price')).toBe(`£${Math.round(figure('real-price') / 1.15)}`);

    await page.goto(new URL('/', page.url()).href);
    const row = page.locator(`tr[data-f^="${slug}|"] td[data-l=price]`);
    expect((await row.allInnerTexts())[0]).toMatch(/^£\d+\s+€/);
    expect(await page.evaluate(() => document.cookie)).toBe('');
    await page.getByRole('radio', { name: 'EUR' }).check();
    expect((await row.allInnerTexts())[0]).toMatch(/^€[\d.]+\s+£/);
    expect(complaints).toEqual([]);
  });

  test('hold on the comparison too, also for panels that are added later', async () => {
    await using opened = await site.open(`/compare/?with=${slug}`);
    const { page, complaints } = opened;
    const cells = page.locator('tr[data-metric="magnetic-field-on"] td a.figure');
    await page.getByRole('radio', { name: 'milligauss' }).check();
    const head = page.locator('tr[data-metric="magnetic-field-on"] th.what');
    await page.getByText('Eyes, flicker and fields').click();
    await expect.poll(async () => (await head.allInnerTexts()).join()).toContain(', mG');
    expect(Number.parseFloat((await cells.allInnerTexts())[0] ?? '')).toBeCloseTo(10 * figure('magnetic-field-on'), 1);
    await page.locator('.choices button').first().click();
    await expect.poll(() => page.locator('tr[data-metric="led-area"] td.n').count()).toBe(2);
    await page.getByText('Eyes, flicker and fields').click();
    expect((await head.allInnerTexts()).join()).toContain(', mG');
    await page.getByRole('radio', { name: 'as priced' }).check();
    const [priced] = await page.locator('tr[data-metric="real-price"] td a.figure').allInnerTexts();
    expect(priced).toBe(`£${Math.round(figure('real-price') / 1.15)}`);
    expect(complaints).toEqual([]);
  });

  test('odd things in the browser’s storage do no harm', async () => {
    await using opened = await site.open('/404.html');
    const { page, complaints } = opened;
    for (const odd of ['{', 'null', '[]', '{"length":{}}', '"in"', '{"length":"<b>"}']) {
      await page.evaluate((text) => localStorage.setItem('panel-ledger-units', text), odd);
      await page.goto(new URL(`/panels/${slug}/`, page.url()).href);
      expect(await page.getByRole('radio', { name: 'centimetres' }).isChecked()).toBe(true);
    }
    expect(complaints).toEqual([]);
  });

  test('without a script there is nothing to choose, and the guide’s own units stand', async () => {
    await using opened = await site.open(`/panels/${slug}/`, { javaScriptEnabled: false });
    const { page } = opened;
    expect(await page.getByRole('radio').count()).toBe(0);
    const [text] = await page.locator('a[href$="#magnetic-field-on"]').first().allInnerTexts();
    expect(text).toMatch(/ µT$/);
  });
});

import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type OpenSite, openSite, PHONE } from './browser.ts';
import { halfLastDigit } from './last-digit.ts';
import { currentValue, panelsJson } from './site.ts';

const data = panelsJson();
const SLUG = 'kelpwright-cormorant';
const figureValue = (metric: string) => currentValue(data, SLUG, metric);

let site: OpenSite;
beforeAll(async () => {
  site = await openSite();
});
afterAll(() => site.close());

describe('a planned session', () => {
  test('is calculated as the reader types, by the keyboard alone, and stands in the address', async () => {
    await using opened = await site.open('/plan/', { viewport: PHONE });
    const { page, complaints } = opened;
    await page.getByLabel('Panel', { exact: true }).selectOption(SLUG);
    const distance = page.getByLabel('Distance from the LEDs');
    expect(await distance.inputValue()).toBe('');
    await distance.fill('30');
    const exposure = page.getByLabel(/Radiant exposure/);
    expect(await exposure.inputValue()).toBe('');
    await exposure.focus();
    await page.keyboard.type('10');
    const minutes = 10_000 / figureValue('mean-irradiance-at-30-cm') / 60;
    const said = page.locator('[data-plan-said]');
    await expect.poll(() => said.textContent()).toContain('for 10 J/cm²');
    const shown = /: ([\d.]+) min/.exec((await said.textContent()) ?? '')?.[1] ?? '';
    expect(Math.abs(Number(shown) - minutes)).toBeLessThanOrEqual(1.001 * halfLastDigit(shown));
    expect(new URL(page.url()).search).toBe(`?panel=${SLUG}&cm=30&exposure=10`);
    await page.goBack();
    expect(await exposure.inputValue()).toBe('');
    expect(new URL(page.url()).search).toBe(`?panel=${SLUG}&cm=30`);
    expect(complaints).toEqual([]);
  });

  test('says where it is longer than the time to the infrared limit, and what that is not', async () => {
    await using opened = await site.open(`/plan/?panel=${SLUG}&cm=30&exposure=60`);
    const eyes = opened.page.getByRole('complementary', { name: 'Cautions' });
    await eyes.waitFor();
    const text = (await eyes.textContent()) ?? '';
    expect(text).toContain('longer than the');
    expect(text).toContain('Not a product certification and not medical advice');
    expect(text).not.toMatch(/\b(safe|unsafe|passed|harmless)\b/i);
    await opened.page.getByLabel(/Radiant exposure/).fill('0.1');
    await expect.poll(() => eyes.textContent()).not.toContain('longer than the');
  });

  test('takes inches, and shows the same session', async () => {
    await using opened = await site.open(`/plan/?panel=${SLUG}&cm=30&exposure=10`);
    const { page } = opened;
    const before = await page.locator('[data-plan-result] dd').first().textContent();
    await page.getByLabel('Unit of the distance').selectOption('in');
    expect(await page.getByLabel('Distance from the LEDs').inputValue()).toBe('11.81');
    expect(await page.locator('[data-plan-result] dd').first().textContent()).toBe(before);
    expect(new URL(page.url()).searchParams.get('unit')).toBe('in');
  });

  test.each([
    '/plan/?panel=nobody&cm=1e9&exposure=-1',
    `/plan/?panel=${encodeURIComponent('<img src=x onerror=alert(1)>')}`,
    `/plan/?${'x'.repeat(5000)}=1`,
  ])('an address that is none of the planner’s does no harm: %#', async (address) => {
    await using opened = await site.open(address);
    const { page, complaints } = opened;
    await expect.poll(() => page.locator('[data-plan-said]').textContent()).toMatch(/left aside|Left aside/);
    expect(await page.locator('main img').count()).toBe(0);
    expect(complaints).toEqual([]);
  });

  test('prints its result, and without a script says where the numbers are', async () => {
    await using opened = await site.open(`/plan/?panel=${SLUG}&cm=30&exposure=10`);
    await opened.page.locator('[data-plan-result] svg').waitFor();
    await opened.page.emulateMedia({ media: 'print' });
    expect(await opened.page.locator('[data-plan-result] h2').isVisible()).toBe(true);
    await using without = await site.open('/plan/', { javaScriptEnabled: false });
    expect(await without.page.locator('#plan').isVisible()).toBe(false);
    expect((await without.page.locator('main').allInnerTexts())[0]).toContain('The planner needs a script');
  });
});

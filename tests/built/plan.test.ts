import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { DESK, type OpenSite, openSite, PHONE } from './browser.ts';
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
    const exposure = page.getByLabel(/Exposure/);
    expect(await exposure.inputValue()).toBe('');
    await exposure.focus();
    await page.keyboard.type('10');
    const seconds = 10_000 / figureValue('mean-irradiance-at-30-cm');
    const said = page.locator('[data-plan-said]');
    await expect.poll(() => said.textContent()).toContain('for 10 J/cm²');
    const [, minutes, rest] = /: (\d+) min(?: (\d+) s)? \(/.exec((await said.textContent()) ?? '') ?? [];
    // The interval leaves whole seconds, or tens of them.
    expect(Math.abs(60 * Number(minutes) + Number(rest ?? 0) - seconds)).toBeLessThanOrEqual(5);
    expect(await page.locator('.big b').textContent()).toBe(
      [`${minutes} min`, rest && `${rest} s`].filter(Boolean).join(' '),
    );
    expect(new URL(page.url()).search).toBe(`?panel=${SLUG}&cm=30&exposure=10`);
    await page.goBack();
    expect(await exposure.inputValue()).toBe('');
    expect(new URL(page.url()).search).toBe(`?panel=${SLUG}&cm=30`);
    expect(complaints).toEqual([]);
  });

  test('says where it is longer than the time to the infrared limit, and what that is not', async () => {
    await using opened = await site.open(`/plan/?panel=${SLUG}&cm=30&exposure=60`);
    const { page } = opened;
    const eyes = page.getByRole('complementary', { name: 'Eyes' });
    await eyes.waitFor();
    expect(await eyes.locator('strong').textContent()).toMatch(/onger than the infrared limit for the eye/);
    const text = (await page.locator('.plan-answer').textContent()) ?? '';
    expect(text).toContain('Not a product certification and not medical advice');
    expect(text).not.toMatch(/\b(safe|unsafe|passed|harmless)\b/i);
    expect(await eyes.getByRole('img').getAttribute('aria-label')).toMatch(/is used up after .*; planned: /);
    await page.getByLabel(/Exposure/).fill('0.1');
    await expect.poll(() => eyes.textContent()).not.toContain('onger than the');
    expect(await eyes.textContent()).toContain('would be used up after');
  });

  test('takes inches, and shows the same session', async () => {
    await using opened = await site.open(`/plan/?panel=${SLUG}&cm=30&exposure=10`);
    const { page } = opened;
    const before = await page.locator('.big').textContent();
    await page.getByLabel('Unit of the distance').selectOption('in');
    expect(await page.getByLabel('Distance from the LEDs').inputValue()).toBe('11.81');
    expect(await page.getByLabel('Height, in').inputValue()).toBe('66.93');
    expect(await page.locator('.big').textContent()).toBe(before);
    await expect.poll(() => page.locator('.plan-eye').textContent()).toContain('11.8 in');
    // What another field asks for moves neither length by a rounding.
    await page.getByLabel(/Exposure/).fill('11');
    expect(new URL(page.url()).search).toBe(`?panel=${SLUG}&cm=30&unit=in&exposure=11`);
  });

  test.each([
    [PHONE, '.plan-eye > p', '.plan-eye .time-strip'],
    [DESK, '.plan-figures', '.plan-person'],
  ])('has form and answer on one screen of %o', async (viewport, ...parts) => {
    await using opened = await site.open('/plan/?panel=fennimarsh-sedge&cm=30&exposure=10', { viewport });
    const { page } = opened;
    await page.locator('.plan-eye').waitFor();
    for (const part of ['#plan', '.big', ...parts]) {
      const box = await page.locator(part).boundingBox();
      expect((box?.y ?? 0) + (box?.height ?? Number.POSITIVE_INFINITY), part).toBeLessThanOrEqual(viewport.height);
    }
    expect(await page.evaluate(() => scrollY)).toBe(0);
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
    await opened.page.locator('.person').waitFor();
    await opened.page.emulateMedia({ media: 'print' });
    expect(await opened.page.locator('[data-plan-result] h2').isVisible()).toBe(true);
    await using without = await site.open('/plan/', { javaScriptEnabled: false });
    expect(await without.page.locator('#plan').isVisible()).toBe(false);
    expect((await without.page.locator('main').allInnerTexts())[0]).toContain('The planner needs a script');
  });
});

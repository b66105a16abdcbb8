import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type OpenSite, openSite } from './browser.ts';
import { attribute, pageAt, panelFiles, textOf } from './site.ts';

let site: OpenSite;
beforeAll(async () => {
  site = await openSite();
});
afterAll(() => site.close());

const slug = panelFiles('published')[0]?.slug as string;
const panelName = textOf(pageAt(`/panels/${slug}/`).document.querySelector('h1'));
const methodName = textOf(pageAt('/methods/peak-irradiance/').document.querySelector('h1'));

/** Types a query and waits until its results stand there. */
async function search(page: Page, query: string): Promise<void> {
  await page.getByRole('searchbox').fill(query);
  await page.locator('#count', { hasText: /found/ }).waitFor();
}

test('finds a panel by its name and a method by its words, with nothing but the site to ask', async () => {
  await using opened = await site.open('/search/');
  const { page, complaints } = opened;
  await search(page, panelName);
  const first = page.locator('#found li').first();
  expect(await first.locator('a').textContent()).toBe(panelName);
  expect(await first.locator('a').getAttribute('href')).toBe(`/panels/${slug}/`);
  expect(await first.locator('a + span').textContent()).toContain('Panel');

  await page.getByRole('searchbox').fill(methodName);
  await page.locator('#found a[href="/methods/peak-irradiance/"]').waitFor();
  expect(await page.locator('#found li').first().locator('a').textContent()).toBe(methodName);
  expect(complaints).toEqual([]);
});

test('gives results that the keyboard reaches and opens', async () => {
  await using opened = await site.open('/search/');
  const { page } = opened;
  await page.getByRole('searchbox').focus();
  await page.keyboard.type('flicker');
  await page.locator('#found li').first().waitFor();
  await page.keyboard.press('Tab');
  const href = await page.evaluate(() => document.activeElement?.getAttribute('href'));
  expect(href).toBe(await page.locator('#found a').first().getAttribute('href'));
  await page.keyboard.press('Enter');
  await page.waitForURL(`**${href}`);
});

test('tells a screen reader how many pages were found, and where there is none', async () => {
  await using opened = await site.open('/search/');
  const { page } = opened;
  await search(page, 'irradiance');
  const status = page.getByRole('status');
  const found = Number((await status.textContent())?.match(/^\d+/)?.[0]);
  expect(found).toBeGreaterThan(2);
  expect(await page.locator('#found li').count()).toBe(Math.min(found, 30));
  await page.getByRole('searchbox').fill('qqqq');
  await page.locator('#count', { hasText: 'Nothing found' }).waitFor();
  expect(await page.locator('#found li').count()).toBe(0);
});

test('keeps the query in the address, so that a search can be linked', async () => {
  await using opened = await site.open('/search/?q=standby');
  const { page } = opened;
  expect(await page.getByRole('searchbox').inputValue()).toBe('standby');
  await page.locator('#found li').first().waitFor();
  await search(page, 'sound level');
  expect(new URL(page.url()).searchParams.get('q')).toBe('sound level');
  await page.getByRole('searchbox').fill('');
  await page.locator('#found li').first().waitFor({ state: 'detached' });
  expect(new URL(page.url()).search).toBe('');
});

test('takes what is typed for text, never for markup', async () => {
  const query = '<i>qqqq</i>';
  await using opened = await site.open(`/search/?q=${encodeURIComponent(query)}`);
  const { page, complaints } = opened;
  await page.locator('#count', { hasText: 'Nothing found' }).waitFor();
  expect(await page.locator('#count').textContent()).toContain(query);
  expect(await page.locator('main i').count()).toBe(0);
  expect(complaints).toEqual([]);
});

test('leaves the working pages out, which would crowd the panels out', async () => {
  await using opened = await site.open('/search/');
  const { page } = opened;
  await search(page, panelName);
  const links = await page.locator('#found a').evaluateAll((them) => them.map((it) => it.getAttribute('href')));
  expect(links.filter((it) => it?.includes('methodology'))).toEqual([]);
});

test('says what to do where scripts are off', async () => {
  await using opened = await site.open('/search/', { javaScriptEnabled: false });
  const { page } = opened;
  expect(await page.locator('main p:visible').allInnerTexts()).toEqual([
    expect.stringContaining('The search needs a script'),
  ]);
  expect(await page.getByRole('searchbox').count()).toBe(0);
  const links = page.locator('main a');
  const shown = await links.evaluateAll((them) =>
    them.map((it) => [it.getAttribute('href'), it.getClientRects().length > 0]),
  );
  expect(shown).toContainEqual(['/panels/', true]);
  expect(shown).toContainEqual(['/methods/', true]);
  expect(attribute(pageAt('/search/').document.querySelector('form'), 'role')).toBe('search');
});

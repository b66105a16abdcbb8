import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { METRICS } from '../../src/measure/metrics.ts';
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
  // Past the three filters.
  for (let i = 0; i < 4; i++) await page.keyboard.press('Tab');
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

test('filters by kind, maker and size class, alone or with words, and keeps them in the address', async () => {
  await using opened = await site.open('/search/?kind=Method&q=irradiance');
  const { page, complaints } = opened;
  await page.locator('#found li').first().waitFor();
  const kinds = await page.locator('#found li a + span').allTextContents();
  expect(kinds.length).toBeGreaterThan(2);
  // The list of methods says in its title what it is.
  expect(new Set(kinds.map((it) => it.trim()).filter(Boolean))).toEqual(new Set(['Method']));
  await page.getByRole('combobox', { name: 'Kind of page' }).selectOption('Panel');
  await page.getByRole('searchbox').fill('');
  const maker = panelFiles('published')[0]?.slug.split('-')[0] ?? '';
  const option = await page
    .getByLabel('Maker')
    .locator('option')
    .evaluateAll((them) => them.map((it) => it.textContent ?? ''));
  const name = option.find((it) => it.toLowerCase().startsWith(maker)) as string;
  await page.getByRole('combobox', { name: 'Maker' }).selectOption(name);
  // While it is being looked for, nothing is there.
  await expect
    .poll(async () => {
      const found = await page.locator('#found li a').allTextContents();
      return found.length > 0 && found.every((it) => it.startsWith(name));
    })
    .toBe(true);
  expect(new URL(page.url()).searchParams.get('maker')).toBe(name);
  await page.goBack();
  expect(await page.getByRole('combobox', { name: 'Maker' }).inputValue()).toBe('');
  expect(complaints).toEqual([]);
});

test('a figure’s name finds its method first', async () => {
  await using opened = await site.open('/search/');
  const { page } = opened;
  for (const [query, address] of [
    ['price per optical watt', '/methods/price-per-watt/'],
    ['mean irradiance', '/methods/mean-irradiance/'],
    ['flicker', '/methods/flicker/'],
    ['emitted power', '/methods/emitted-power/'],
    ['Uniformity', '/methods/uniformity/'],
  ] as const) {
    await page.getByRole('searchbox').fill(query);
    await expect.poll(() => page.locator('#found a').first().getAttribute('href'), { message: query }).toBe(address);
  }
});

test('what stands on every panel’s page alike finds the page that explains it, not the panels', async () => {
  await using opened = await site.open('/search/?kind=Panel');
  const { page } = opened;
  await page.locator('#found li').first().waitFor();
  for (const query of ['Building Biology', 'reference level', 'acceptance']) {
    await page.getByRole('searchbox').fill(query);
    await page.locator('#count', { hasText: 'Nothing found' }).waitFor();
  }
  await page.getByRole('combobox', { name: 'Kind of page' }).selectOption('');
  await page.locator('#found a[href^="/methods/"], #found a[href="/cautions/"]').first().waitFor();
});

test('a panel is found by its own name, not by those that it ties with', async () => {
  await using opened = await site.open('/search/');
  const { page } = opened;
  const isTied = ({ slug }: { slug: string }) => pageAt(`/panels/${slug}/`).html.includes('A tie with');
  expect(panelFiles('published').some(isTied)).toBe(true);
  const nameAt = (address: string) => textOf(pageAt(address).document.querySelector('h1'));
  // The tester may well name one panel in the notes on another.
  const own = (address: string) =>
    ['h1', '.lead', '.prose'].map((part) => textOf(pageAt(address).document.querySelector(part))).join(' ');
  for (const it of panelFiles('published')) {
    const address = `/panels/${it.slug}/`;
    const model = nameAt(address).split(' ').at(-1) as string;
    await search(page, model);
    const found = page.locator('#found a[href^="/panels/"]');
    await expect.poll(() => found.first().getAttribute('href'), { message: model }).toBe(address);
    const all = await found.evaluateAll((them) => them.map((link) => link.getAttribute('href') as string));
    expect(
      all.filter((other) => !own(other).includes(model)),
      model,
    ).toEqual([]);
  }
});

test('filters that the guide does not have are left aside', async () => {
  await using opened = await site.open('/search/?kind=%3Cscript%3E&maker=nobody&q=flicker');
  const { page, complaints } = opened;
  await page.locator('#found li').first().waitFor();
  expect(await page.getByRole('combobox', { name: 'Kind of page' }).inputValue()).toBe('');
  expect(complaints).toEqual([]);
});

test('a reader’s own word leads to the page that it is about, above what was found', async () => {
  await using opened = await site.open('/search/');
  const { page, complaints } = opened;
  for (const [word, address] of [
    ['lumen', '/methods/optical-power/'],
    ['Dose', '/methods/radiant-exposure/'],
    ['is it safe?', '/cautions/'],
    ['EMF', '/methods/field-levels/'],
    ['glasses', '/cautions/#eyes'],
    ['seasonal', '/cautions/#not-medical-advice'],
    ['joule', '/methods/radiant-exposure/'],
    ['fluence', '/methods/radiant-exposure/'],
    ['PWM', '/methods/flicker/'],
    ['decibel', '/methods/sound-of-panel/'],
  ] as const) {
    await page.getByRole('searchbox').fill(word);
    await expect.poll(() => page.locator('#meant a').first().getAttribute('href'), { message: word }).toBe(address);
  }
  await page.getByRole('searchbox').fill('qqqq');
  await page.locator('#count', { hasText: 'Nothing found' }).waitFor();
  expect(await page.locator('#meant li').count()).toBe(0);
  expect(complaints).toEqual([]);
});

test('results show nothing of the names that methods, metrics and files have in the code', async () => {
  await using opened = await site.open('/search/');
  const { page } = opened;
  const ids = METRICS.map((it) => it.id).filter((it) => it.split('-').length > 2);
  expect(ids.length).toBeGreaterThan(20);
  for (const query of ['computed', 'figures by this method', 'price per emitted watt', 'uncertainty', 'uniformity']) {
    await page.getByRole('searchbox').fill(query);
    await page.locator('#count', { hasText: /found/ }).waitFor();
    await expect.poll(() => page.locator('#count').textContent()).toMatch(/found/);
    const texts = await page.locator('#found').textContent();
    expect(texts).not.toMatch(/[a-z]+@\d|\.(ts|mdx|yaml)\b|[a-z]+-[a-z]+-[a-z]+-(cm|irradiance)/);
    expect(ids.filter((it) => texts?.includes(it))).toEqual([]);
  }
});

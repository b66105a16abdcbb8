import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type OpenSite, openSite, PHONE } from './browser.ts';
import { panelsJson } from './site.ts';

const data = panelsJson();
const ranked = data.panels.filter((it) => it.rank !== null);
const figureOf = (slug: string, metric: string) => {
  const it = data.panels.find((panel) => panel.slug === slug)?.sessions[0]?.figures[metric];
  return it && it.value !== null ? it.value : undefined;
};

let site: OpenSite;
beforeAll(async () => {
  site = await openSite();
});
afterAll(() => site.close());

/** Slugs of the rows that the tables show. */
async function shown(page: Page): Promise<string[]> {
  const links = await page
    .locator('table.ranking tbody th a')
    .evaluateAll((them) => them.map((it) => it.getAttribute('href')));
  return links.map((it) => it?.split('/')[2] ?? '').toSorted();
}
const count = (page: Page) => page.locator('[data-count]').textContent();
const open = (page: Page, words: RegExp) => page.locator('summary', { hasText: words }).click();

describe('filters', () => {
  test('narrow the tables, say how many are left, and stand in the address', async () => {
    await using opened = await site.open('/');
    const { page, complaints } = opened;
    expect(await shown(page)).toHaveLength(ranked.length);
    await open(page, /Filter the tables/);
    await page
      .getByRole('group', { name: /^Price/ })
      .getByLabel('to')
      .fill('200');
    const cheap = ranked.map((it) => it.slug).filter((slug) => (figureOf(slug, 'real-price') ?? Infinity) <= 200);
    expect(cheap.length).toBeGreaterThan(1);
    expect(await shown(page)).toEqual(cheap.toSorted());
    expect(await count(page)).toBe(`${cheap.length} of ${ranked.length} ranked panels are left by the filters.`);
    await page.getByRole('checkbox', { name: /^Desk/ }).check();
    await expect.poll(() => new URL(page.url()).search).toBe('?class=desk&price-to=200');
    await page.goBack();
    await expect.poll(() => new URL(page.url()).search).toBe('?price-to=200');
    expect(await shown(page)).toEqual(cheap.toSorted());
    expect(await page.getByRole('checkbox', { name: /^Desk/ }).isChecked()).toBe(false);
    expect(complaints).toEqual([]);
  });

  test('each says how many panels it would leave', async () => {
    await using opened = await site.open('/?class=palm');
    const { page } = opened;
    const palm = await shown(page);
    await expect.poll(() => page.locator('[data-by=class][data-value=palm]').textContent()).toBe(`(${palm.length})`);
    expect(await page.locator('[data-without=price]').textContent()).toBe(`${palm.length} now`);
    const desk = Number((await page.locator('[data-by=class][data-value=desk]').textContent())?.slice(1, -1));
    await page.getByRole('checkbox', { name: /^Palm/ }).uncheck();
    await page.getByRole('checkbox', { name: /^Desk/ }).check();
    expect(await shown(page)).toHaveLength(desk);
  });

  test('flicker: what has no line is not counted as under it', async () => {
    /** By the frequency of both channels: every panel of the demonstration has read its modes at one frequency. */
    const withLine = ranked
      .map((it) => it.slug)
      .filter((slug) => (figureOf(slug, 'flicker-frequency-combined') ?? Infinity) <= 3000);
    const faster = ranked
      .map((it) => it.slug)
      .filter((slug) => (figureOf(slug, 'flicker-frequency-combined') ?? 0) > 3000);
    expect(faster.length).toBeGreaterThan(1);
    await using opened = await site.open('/?flicker=faster');
    const { page } = opened;
    expect(await shown(page)).toEqual(faster.toSorted());
    await page.getByRole('checkbox', { name: /^above 3 kHz/ }).uncheck();
    await page.getByRole('checkbox', { name: /^at or under the no-effect line/ }).check();
    await expect.poll(() => new URL(page.url()).search).toBe('?flicker=steady');
    for (const slug of await shown(page)) expect(withLine).toContain(slug);
    // A panel whose frequency is not known, or whose flicker lies above the line, is in neither.
    expect((await shown(page)).length + faster.length).toBeLessThan(ranked.length);
  });

  test('a link reproduces the view, sorting and all', async () => {
    await using opened = await site.open('/?price-to=700&sort=desk.price.descending');
    const { page } = opened;
    const prices = await page
      .locator('#table-desk tbody tr td:nth-child(3)')
      .evaluateAll((them) => them.map((it) => Number(it.getAttribute('data-v'))));
    expect(prices.length).toBeGreaterThan(1);
    expect(prices).toEqual(prices.toSorted((a, b) => b - a));
    expect(prices.every((it) => it <= 700)).toBe(true);
    const head = page.locator('#table-desk thead th[data-col=price]');
    expect(await head.getAttribute('aria-sort')).toBe('descending');
    await head.getByRole('button').click();
    await expect.poll(() => new URL(page.url()).search).toBe('?price-to=700&sort=desk.price.ascending');
    await page.goBack();
    expect(await head.getAttribute('aria-sort')).toBe('descending');
  });

  test('where nothing is left the tables say so, and one press clears them', async () => {
    await using opened = await site.open('/?price-to=1');
    const { page } = opened;
    expect(await shown(page)).toEqual([]);
    expect(await page.getByText('None of these panels is left by the filters.').first().isVisible()).toBe(true);
    await page.getByRole('button', { name: 'Clear the filters' }).click();
    expect(await shown(page)).toHaveLength(ranked.length);
    await expect.poll(() => new URL(page.url()).search).toBe('');
  });

  test('print shows what is left and says so, without the tools', async () => {
    await using opened = await site.open('/?class=palm');
    const { page } = opened;
    const before = await shown(page);
    await page.emulateMedia({ media: 'print' });
    expect(await shown(page)).toEqual(before);
    const tools = page.locator('#guide-tools > *');
    const printed = await tools.evaluateAll((them) =>
      them.filter((it) => it.checkVisibility()).map((it) => it.textContent),
    );
    expect(printed).toEqual([expect.stringMatching(/are left by the filters/)]);
  });
});

describe('own prices', () => {
  const SLUG = 'kelpwright-limpet';

  test('are calculated with at once, marked, kept in the address, and gone with one press', async () => {
    await using opened = await site.open('/', { viewport: PHONE });
    const { page, complaints } = opened;
    await open(page, /own prices/);
    await page.getByLabel('Panel', { exact: true }).selectOption(SLUG);
    await page.getByLabel(/Your price/).fill('10');
    await page.getByRole('button', { name: 'Calculate with it' }).click();
    const row = page.locator(`#table-palm tbody tr[data-f^="${SLUG}|"]`);
    await expect.poll(() => row.textContent()).toContain('your price');
    await expect.poll(() => new URL(page.url()).search).toBe(`?own.${SLUG}=10`);
    const power = figureOf(SLUG, 'optical-power') ?? Number.NaN;
    const perWatt = Number(await row.locator('td').nth(3).getAttribute('data-v'));
    expect(perWatt).toBeCloseTo(10 / power, 6);
    // Cheapest by far now: first, and the rows follow.
    expect(await row.locator('td').first().textContent()).toContain('1st');
    expect((await page.locator('#table-palm tbody tr').first().getAttribute('data-f'))?.startsWith(SLUG)).toBe(true);
    expect(await page.locator('[data-frontier] tbody').textContent()).toContain('your price');
    expect(await page.locator('[data-own-list]').textContent()).toMatch(/step-up from it/i);

    await page.getByRole('button', { name: 'Back to the guide’s prices' }).click();
    await expect.poll(() => row.textContent()).not.toContain('your price');
    await expect.poll(() => new URL(page.url()).search).toBe('');
    expect(complaints).toEqual([]);
  });

  test('a percentage goes on all of them, and a filter on the price goes by it', async () => {
    await using opened = await site.open('/?extra=100&price-to=200');
    const { page } = opened;
    const wanted = ranked.map((it) => it.slug).filter((slug) => 2 * (figureOf(slug, 'real-price') ?? Infinity) <= 200);
    await expect.poll(() => shown(page)).toEqual(wanted.toSorted());
  });
});

describe('addresses that are none of the guide’s', () => {
  test.each([
    ['unknown names', '/?villa=1&own.nobody=5&class=castle'],
    ['nonsense numbers', '/?price-from=NaN&price-to=1e999&spend=-4'],
    ['markup', `/?${encodeURIComponent('<img src=x onerror="document.title=1">')}=1&class=%3Cscript%3E`],
    ['broken escapes', '/?price-to=%E0%A4%A&%=%'],
  ])('%s are left aside with a word, and nothing breaks', async (_, address) => {
    await using opened = await site.open(address);
    const { page, complaints } = opened;
    expect(await page.locator('[data-ignored]').textContent()).toMatch(/^Left aside from the address/);
    expect(await shown(page)).toHaveLength(ranked.length);
    expect(await page.locator('main img, main script:not([src])').count()).toBe(0);
    expect(complaints).toEqual([]);
  });
});

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
    .locator('table.ranking tr[data-f] th > a')
    .evaluateAll((them) => them.map((it) => it.getAttribute('href')));
  return links.map((it) => it?.split('/')[2] ?? '').toSorted();
}
const count = (page: Page) => page.locator('[data-count]').textContent();
const open = (page: Page, name: string) => page.getByRole('button', { name: new RegExp(`^${name}`) }).click();
const rows = (page: Page, body: string) => page.locator(`#table-${body} tr[data-f]`);

const inView = (it: Element) => it.getBoundingClientRect().top >= 0 && it.getBoundingClientRect().top < innerHeight / 3;

describe('filters', () => {
  test('narrow the tables, say how many are left, and stand in the address', async () => {
    await using opened = await site.open('/');
    const { page, complaints } = opened;
    expect(await shown(page)).toHaveLength(ranked.length);
    await open(page, 'Filter');
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
    await open(page, 'Filter');
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
    await open(page, 'Filter');
    await page.getByRole('checkbox', { name: /^above 3 kHz/ }).uncheck();
    await page.getByRole('checkbox', { name: /^at or under the no-effect line/ }).check();
    await expect.poll(() => new URL(page.url()).search).toBe('?flicker=steady');
    for (const slug of await shown(page)) expect(withLine).toContain(slug);
    // A panel whose frequency is not known, or whose flicker lies above the line, is in neither.
    expect((await shown(page)).length + faster.length).toBeLessThan(ranked.length);
  });

  test('a link reproduces the view, sorting and all, and opens at the table', async () => {
    await using opened = await site.open('/?price-to=700&sort=all.price.descending');
    const { page } = opened;
    const together = page.locator('#ranking tbody:not([hidden])').first().locator('tr[data-f]');
    const prices = async () =>
      (await together.locator('[data-l=price]').allTextContents()).map((it) =>
        Number(/[\d,.]+/.exec(it)?.[0].replace(',', '')),
      );
    const before = await prices();
    expect(before.length).toBeGreaterThan(5);
    expect(before).toEqual(before.toSorted((a, b) => b - a));
    expect(before.every((it) => it <= 700)).toBe(true);
    await expect.poll(() => page.getByRole('heading', { name: 'All panels' }).evaluate(inView)).toBe(true);
    const head = page.locator('#ranking thead th[data-col=price]');
    expect(await head.getAttribute('aria-sort')).toBe('descending');
    await head.getByRole('button').click();
    await expect.poll(() => new URL(page.url()).search).toBe('?price-to=700&sort=all.price.ascending');
    expect(await prices()).toEqual(before.toReversed());
    await page.goBack();
    await expect.poll(() => head.getAttribute('aria-sort')).toBe('descending');
  });

  test('an address of one table’s order is understood as within each size', async () => {
    await using opened = await site.open('/?sort=desk.price.descending');
    const { page } = opened;
    expect(await page.locator('[data-ignored]').textContent()).toBe('');
    expect(await page.locator('#order-scope').inputValue()).toBe('each');
    expect(await page.locator('#order-column').inputValue()).toBe('price');
  });

  test('the journey: by efficiency over all sizes, only those without flicker, and a link that shows it', async () => {
    await using opened = await site.open('/');
    const { page, complaints } = opened;
    // Nobody is taken away from the first screen who has not asked for the table.
    expect(await page.evaluate(() => scrollY)).toBe(0);
    await page.getByLabel('Order').selectOption('all sizes together');
    await page.locator('#order-column').selectOption('efficiency');
    await open(page, 'Filter');
    await page.getByRole('checkbox', { name: /^above 3 kHz/ }).check();
    await expect.poll(() => new URL(page.url()).search).toBe('?flicker=faster&sort=all.efficiency.descending');
    const seen = await page.locator('#ranking tr[data-f] th > a').allTextContents();
    await using linked = await site.open(`/${new URL(page.url()).search}`);
    expect(await linked.page.locator('#ranking tr[data-f] th > a').allTextContents()).toEqual(seen);
    // Each row says its size now.
    expect(await linked.page.locator('#ranking tr[data-f] .size').first().isVisible()).toBe(true);
    expect(complaints).toEqual([]);
  });

  test('go along to the ranking by the other watt', async () => {
    await using opened = await site.open('/?price-to=700&sort=all.price-per-watt.descending');
    const { page } = opened;
    const before = await shown(page);
    await page.getByRole('link', { name: 'that leaves the LEDs' }).click();
    await page.waitForURL(/emitted/);
    expect(await shown(page)).toEqual(before);
    expect(await page.locator('[data-ignored]').textContent()).toBe('');
    expect(await page.locator('#ranking th[aria-sort]').getAttribute('data-col')).toBe('price-per-emitted-watt');
    await page.getByRole('link', { name: 'in the frame', exact: true }).click();
    await expect.poll(() => page.url()).toMatch(/\/\?price-to=700/);
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
    const tools = page.locator('#guide-tools > :not(:empty)');
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
    const interval = await page.locator(`#table-palm tr[data-f^="${SLUG}|"] .iv`).getAttribute('d');
    expect(await page.locator('#table-palm .tie').count()).toBe(2);
    await open(page, 'My prices');
    await page.getByLabel('Panel', { exact: true }).selectOption(SLUG);
    await page.getByLabel(/Your price/).fill('10');
    await page.getByRole('button', { name: 'Calculate with it' }).click();
    const row = page.locator(`#table-palm tr[data-f^="${SLUG}|"]`);
    await expect.poll(() => row.textContent()).toContain('your price');
    await expect.poll(() => new URL(page.url()).search).toBe(`?own.${SLUG}=10`);
    const power = figureOf(SLUG, 'optical-power') ?? Number.NaN;
    const perWatt = Number.parseFloat((await row.locator('.watt').textContent()) ?? '');
    expect(perWatt).toBeCloseTo(10 / power, 1);
    // Its interval is drawn where it is now, and no bracket joins what ties no more.
    expect(await row.locator('.iv').getAttribute('d')).not.toBe(interval);
    expect(await page.locator('#table-palm .tie').count()).toBe(0);
    // Cheapest by far now: first, and the rows follow.
    expect(await row.locator('td').first().textContent()).toBe('1 yours');
    expect(await rows(page, 'palm').first().getAttribute('data-f')).toMatch(new RegExp(`^${SLUG}`));
    expect(await page.locator('[data-frontier] tbody').textContent()).toContain('your price');
    expect(await page.locator('[data-own-list]').textContent()).toMatch(/step-up from it/i);

    await page.getByRole('button', { name: 'Back to the guide’s prices' }).click();
    await expect.poll(() => row.textContent()).not.toContain('your price');
    expect(await row.locator('.iv').getAttribute('d')).toBe(interval);
    expect(await page.locator('#table-palm .tie').count()).toBe(2);
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

describe('rows that are picked', () => {
  test('lead to their comparison in two taps and a press', async () => {
    await using opened = await site.open('/', { viewport: PHONE });
    const { page, complaints } = opened;
    const bar = page.locator('[data-compare]');
    await page.getByRole('checkbox', { name: 'Compare Kelpwright Gannet' }).check();
    expect(await bar.textContent()).toContain('pick another');
    await page.getByRole('checkbox', { name: 'Compare Quennick Tope' }).check();
    await page.getByRole('link', { name: 'Compare the 2 picked' }).click();
    await page.waitForURL(/compare/);
    expect(new URL(page.url()).search).toBe('?with=kelpwright-gannet,quennick-tope');
    expect(complaints).toEqual([]);
  });

  test('are as many as the comparison takes, and can be let go', async () => {
    await using opened = await site.open('/');
    const { page } = opened;
    const boxes = page.getByRole('checkbox', { name: /^Compare / });
    for (let i = 0; i < 5; i++) await boxes.nth(i).check();
    expect(await boxes.nth(5).isDisabled()).toBe(true);
    // Rows that come into the page later are full too, and those that go stay picked.
    await page.getByLabel('Order').selectOption('all sizes together');
    expect(await page.getByRole('checkbox', { name: /^Compare /, checked: true }).count()).toBe(5);
    await page.getByRole('button', { name: 'Clear', exact: true }).click();
    expect(await page.getByRole('checkbox', { name: /^Compare /, checked: true }).count()).toBe(0);
    expect(await page.locator('[data-compare]').isVisible()).toBe(false);
  });
});

describe('brackets of ties', () => {
  const parts = (page: Page) =>
    page
      .locator('#ranking .tie')
      .evaluateAll((them) => them.filter((it) => it.checkVisibility()).map((it) => it.className));

  test('close over rows that are left out, and show in the order of rank alone', async () => {
    await using opened = await site.open('/');
    const { page } = opened;
    const all = await parts(page);
    expect(all.length).toBeGreaterThan(3);
    await page.locator('#order-column').selectOption('flicker');
    expect(await parts(page)).toEqual([]);
    await page.locator('#order-column').selectOption({ index: 1 });
    expect(await parts(page)).toEqual(all);
    // One of each tie is left: nothing to join.
    await page.goto(new URL('/?maker=kelpwright', page.url()).href);
    expect(await rows(page, 'palm').count()).toBe(1);
    expect(await parts(page)).toEqual([]);
  });
});

test.each(['/', '/emitted/', '/frame/'])(
  'what a window shows of %s needs no scrolling sideways, and every figure keeps its name',
  async (path) => {
    await using opened = await site.open(path);
    const { page } = opened;
    // The guide's own page has the ranking of the frame: its address leads there.
    await page.waitForURL((it) => it.pathname === (path === '/frame/' ? '/' : path));
    for (const width of [320, 360, 390, 768, 1024, 1264, 1280, 1440]) {
      await page.setViewportSize({ width, height: 800 });
      expect(
        await page.locator('#ranking').evaluate((it) => it.getBoundingClientRect().right),
        `${width}`,
      ).toBeLessThanOrEqual(width);
      expect(await page.evaluate(() => document.documentElement.scrollWidth), `${width}`).toBeLessThanOrEqual(width);
      const labels = await page
        .locator('#ranking tr[data-f]')
        .first()
        .locator('td[data-l]')
        .evaluateAll((them) => them.map((it) => getComputedStyle(it, '::before').content !== 'none'));
      expect(new Set(labels), `${width}`).toEqual(new Set([width < 1264]));
    }
  },
);

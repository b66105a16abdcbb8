import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type OpenSite, openSite } from './browser.ts';
import { pageAt } from './site.ts';

/** Rows of a body that a long table keeps live, as the guide promises. */
const LIVE = 12;
/** Rows of the long table, and how many of them have a gap in every figure. */
const ROWS = 250;
const GAPS = 7;

/** The guide with its first body grown long and the others gone: rank by row, every figure a scrambled number. */
function longGuide(): string {
  const { html } = pageAt('/');
  const cells = [...(/<tr role="row" data-f[\s\S]*?<\/tr>/.exec(html)?.[0] ?? '').matchAll(/<t[hd] ([^>]*)>/g)];
  const row = (i: number) => {
    // 77 and 250 have no common divisor, so this takes each value from 0 to 249 once.
    const value = (i * 77) % ROWS;
    const figures = cells.slice(2).map(([, attributes]) => {
      if (attributes?.includes('aria-hidden')) return `<td ${attributes}></td>`;
      const isRanked = attributes?.includes('watt');
      if (!isRanked && value < GAPS)
        return `<td ${attributes}><span class="gap">–</span><small>not measured</small></td>`;
      return `<td ${attributes}><span>${isRanked ? i + 1 : value}</span></td>`;
    });
    return `<tr role="row" data-f="panel-${i + 1}|maker||||"><td role="cell">${i + 1}</td><th scope="row" role="rowheader"><a href="/panels/">Panel ${i + 1}</a><small></small></th>${figures.join('')}</tr>`;
  };
  const rows = Array.from({ length: ROWS }, (_, i) => row(i)).join('');
  const [first = ''] = /<tbody role="rowgroup" id="table-[\s\S]*?<\/tr>/.exec(html) ?? [];
  const at = html.indexOf(first);
  const end = html.indexOf('</table>', at);
  return `${html.slice(0, at)}${first}${rows}</tbody>${html.slice(end)}`;
}

let site: OpenSite;
beforeAll(async () => {
  site = await openSite({ '/long/': longGuide() });
});
afterAll(() => site.close());

/** The number that each row of a body shows in a column, null for a gap, as the rows stand. */
async function column(page: Page, body: string, label: string): Promise<Array<number | null>> {
  const heads = await page.locator('#ranking thead th').allInnerTexts();
  const index = heads.findIndex((it) => it.startsWith(label));
  const values = await page
    .locator(`${body} >> tr[data-f]`)
    .evaluateAll((rows, at) => rows.map((row) => row.children[at]?.firstElementChild?.textContent ?? ''), index);
  return values.map((it) => (/\d/.test(it) ? Number(/[\d.,]+/.exec(it)?.[0].replace(',', '')) : null));
}

const ranksOf = async (page: Page, body: string) =>
  (await page.locator(`${body} >> tr[data-f] > td:first-child`).allTextContents()).map((it) => Number.parseInt(it, 10));

const sortState = (page: Page) =>
  page
    .locator('#ranking thead th[aria-sort]')
    .evaluateAll((them) => them.map((it) => `${it.textContent} ${it.getAttribute('aria-sort')}`));

/** Presses Tab until the button of a heading has the focus. */
async function tabTo(page: Page, label: string): Promise<void> {
  for (let i = 0; i < 400; i += 1) {
    await page.keyboard.press('Tab');
    const isThere = await page.evaluate(
      (name) =>
        document.activeElement instanceof HTMLButtonElement &&
        document.activeElement.textContent?.startsWith(name) === true &&
        document.activeElement.closest('thead') !== null,
      label,
    );
    if (isThere) return;
  }
  throw new Error(`Tab never came to ${label}`);
}

/** Values in order, gaps last: how a sorted column must look. */
const inOrder = (values: Array<number | null>, direction: 1 | -1) =>
  values.toSorted((a, b) => (a === null || b === null ? Number(a === null) - Number(b === null) : direction * (a - b)));

describe('the ranking', () => {
  const body = '#table-desk';
  const press = (page: Page, name: string) => page.locator('#ranking thead').getByRole('button', { name }).click();

  test('comes in the order of rank within each size, and says so', async () => {
    await using opened = await site.open('/');
    const { page } = opened;
    expect(await sortState(page)).toEqual(['€ a watt ascending']);
    for (const it of ['palm', 'desk', 'torso', 'full-length']) {
      const ranks = await ranksOf(page, `#table-${it}`);
      expect(ranks).toEqual(ranks.toSorted((a, b) => a - b));
    }
  });

  test('is sorted by the keyboard alone: the better end first, then the other, gaps last both ways', async () => {
    await using opened = await site.open('/');
    const { page, complaints } = opened;
    const before = await column(page, body, 'Efficiency');
    expect(before).toContain(null);
    expect(new Set(before).size).toBeGreaterThan(2);

    await tabTo(page, 'Efficiency');
    await page.keyboard.press('Enter');
    expect(await sortState(page)).toEqual(['Efficiency, % descending']);
    expect(await column(page, body, 'Efficiency')).toEqual(inOrder(before, -1));

    await page.keyboard.press('Space');
    expect(await sortState(page)).toEqual(['Efficiency, % ascending']);
    expect(await column(page, body, 'Efficiency')).toEqual(inOrder(before, 1));
    // The focus stays on the heading, so that a third press sorts again.
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Efficiency, %');

    await tabTo(page, 'Peak');
    await page.keyboard.press('Enter');
    const peaks = await column(page, body, 'Peak');
    expect(peaks).toEqual(inOrder(peaks, -1));
    expect(complaints).toEqual([]);
  });

  test('sorts its panels by name', async () => {
    await using opened = await site.open('/');
    const { page } = opened;
    await press(page, 'Panel');
    const names = await page.locator(`${body} tr[data-f] th > a`).allTextContents();
    expect(names).toEqual(names.toSorted((a, b) => a.localeCompare(b, 'en')));
    expect(names.length).toBeGreaterThan(2);
  });

  test('sorts all sizes together when asked, and never those that were measured otherwise with them', async () => {
    await using opened = await site.open('/');
    const { page } = opened;
    const sizes = await page.locator('#ranking tr[data-f]').count();
    await press(page, 'Efficiency');
    await page.getByLabel('Order').selectOption('all sizes together');
    const bodies = page.locator('#ranking tbody:not([hidden])');
    expect(await bodies.count()).toBe(2);
    const together = await column(page, '#ranking tbody:not([hidden]) >> nth=0', 'Efficiency');
    expect(together).toEqual(inOrder(together, -1));
    expect(together.length).toBe(sizes - 1);
    expect(await bodies.nth(1).locator('tr[data-f] th > a').allTextContents()).toEqual(['Ostrel Vagg']);
    await page.getByLabel('Order').selectOption('within each size');
    expect(await bodies.count()).toBe(5);
  });

  test('has no control that does nothing where scripts are off, and stands in order', async () => {
    await using opened = await site.open('/', { javaScriptEnabled: false });
    const { page } = opened;
    expect(await page.locator('#ranking button, #ranking input, #guide-tools:visible').count()).toBe(0);
    const ranks = await ranksOf(page, body);
    expect(ranks).toEqual(ranks.toSorted((a, b) => a - b));
  });
});

describe('a table of more rows than are kept live', () => {
  const table = '#ranking';
  const count = (page: Page) => page.locator(`${table} >> tr[data-f]`).count();
  const moreButton = (page: Page) => page.getByRole('button', { name: `Show ${ROWS - LIVE} more rows` });

  test('keeps the first live, and sorts over all of them', async () => {
    await using opened = await site.open('/long/');
    const { page, complaints } = opened;
    expect(await count(page)).toBe(LIVE);
    expect(await ranksOf(page, table)).toEqual(Array.from({ length: LIVE }, (_, i) => i + 1));

    await page.locator(table).getByRole('button', { name: 'Light' }).click();
    expect(await count(page)).toBe(LIVE);
    expect(await column(page, table, 'Light')).toEqual(Array.from({ length: LIVE }, (_, i) => ROWS - 1 - i));

    await page.locator(table).getByRole('button', { name: 'Light' }).click();
    expect(await column(page, table, 'Light')).toEqual(Array.from({ length: LIVE }, (_, i) => GAPS + i));
    expect(complaints).toEqual([]);
  });

  test('sorts names with numbers in them as people count', async () => {
    await using opened = await site.open('/long/');
    const { page } = opened;
    const heading = page.locator(table).getByRole('button', { name: 'Panel' });
    await heading.click();
    await heading.click();
    const names = await page.locator(`${table} >> tr[data-f] th > a`).allTextContents();
    expect(names).toEqual(Array.from({ length: LIVE }, (_, i) => `Panel ${ROWS - i}`));
  });

  test('shows all when asked by the keyboard, and goes on sorting', async () => {
    await using opened = await site.open('/long/');
    const { page } = opened;
    await page.locator(table).getByRole('button', { name: 'Mean' }).click();
    await moreButton(page).focus();
    await page.keyboard.press('Enter');
    expect(await count(page)).toBe(ROWS);
    expect(await moreButton(page).count()).toBe(0);
    // The button is gone; whoever pressed it must not be thrown back to the top of the page.
    expect(await page.evaluate(() => document.activeElement?.tagName)).not.toBe('BODY');
    const all = [...Array.from({ length: ROWS - GAPS }, (_, i) => ROWS - 1 - i), ...Array(GAPS).fill(null)];
    expect(await column(page, table, 'Mean')).toEqual(all);
    await page.locator(table).getByRole('button', { name: '€ a watt' }).click();
    expect(await ranksOf(page, table)).toEqual(Array.from({ length: ROWS }, (_, i) => i + 1));
  });

  test('brings all back before it is printed', async () => {
    await using opened = await site.open('/long/');
    const { page } = opened;
    await page.locator(table).getByRole('button', { name: 'Price' }).click();
    expect(await count(page)).toBe(LIVE);
    // Printing to a file sends the page the same events as a printer does.
    await page.pdf();
    expect(await count(page)).toBe(ROWS);
    expect(await column(page, table, 'Price')).toEqual([
      ...Array.from({ length: ROWS - GAPS }, (_, i) => GAPS + i),
      ...Array(GAPS).fill(null),
    ]);
  });

  test('lets the browser’s own search find a row that is aside, and brings it back', async () => {
    await using opened = await site.open('/long/');
    const { page, complaints } = opened;
    const last = page.locator(`${table} >> tr[data-f]`).filter({ hasText: `Panel ${ROWS}` });
    await page.waitForFunction(
      (text) => document.querySelector('.aside-rows')?.textContent?.includes(text),
      `Panel ${ROWS}`,
    );
    expect(await last.count()).toBe(0);
    expect(await page.locator('.aside-rows').getAttribute('hidden')).toBe('until-found');
    // A link to a text is looked up in the same way as what is typed into the browser's search.
    await page.goto('about:blank');
    await page.goto(`${site.origin}/long/#:~:text=Panel%20${ROWS}`);
    await expect.poll(() => count(page)).toBe(ROWS);
    expect(await last.isVisible()).toBe(true);
    expect(await page.locator('.aside-rows').count()).toBe(0);
    expect(complaints).toEqual([]);
  });

  test('has all rows where scripts are off', async () => {
    await using opened = await site.open('/long/', { javaScriptEnabled: false });
    expect(await count(opened.page)).toBe(ROWS);
    expect(await moreButton(opened.page).count()).toBe(0);
  });
});

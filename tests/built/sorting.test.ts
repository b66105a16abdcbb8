import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type OpenSite, openSite } from './browser.ts';
import { pageAt } from './site.ts';

/** Rows that a long table keeps live, as the guide promises. */
const LIVE = 12;
/** Rows of the long table, and how many of them have a gap in every figure. */
const ROWS = 250;
const GAPS = 7;

/** The guide with its first table grown long: rank by row, every figure a scrambled number. */
function longGuide(): string {
  const { html } = pageAt('/');
  const heads = /<thead>[\s\S]*?<\/thead>/.exec(html)?.[0] ?? '';
  const columns = [...heads.matchAll(/data-col="([^"]+)"/g)].map(([, id]) => id).filter((id) => id !== 'name');
  const row = (i: number) => {
    // 77 and 250 have no common divisor, so this takes each value from 0 to 249 once.
    const value = (i * 77) % ROWS;
    const cells = columns.map((id) => {
      if (id === 'rank') return `<td class="n" data-col="rank" data-v="${i + 1}">${i + 1}</td>`;
      return value < GAPS
        ? `<td class="n" data-col="${id}"><span class="gap">–</span><small>not measured</small></td>`
        : `<td class="n" data-col="${id}" data-v="${value}"><span>${value}</span></td>`;
    });
    return `<tr><th scope="row"><a href="/panels/">Panel ${i + 1}</a></th>${cells.join('')}</tr>`;
  };
  const rows = Array.from({ length: ROWS }, (_, i) => row(i)).join('');
  return html.replace(/<tbody>[\s\S]*?<\/tbody>/, `<tbody>${rows}</tbody>`);
}

let site: OpenSite;
beforeAll(async () => {
  site = await openSite({ '/long/': longGuide() });
});
afterAll(() => site.close());

/** The number that each row of a table sorts by in a column, null for a gap, as the rows stand. */
async function column(page: Page, table: string, label: string): Promise<Array<number | null>> {
  const heads = await page.locator(`${table} >> thead th`).allInnerTexts();
  const index = heads.findIndex((it) => it.startsWith(label));
  const values = await page
    .locator(`${table} >> tbody tr`)
    .evaluateAll((rows, at) => rows.map((row) => row.children[at]?.getAttribute('data-v') ?? null), index);
  return values.map((it) => (it === null ? null : Number(it)));
}

const sortState = (page: Page, table: string) =>
  page
    .locator(`${table} >> thead th[aria-sort]`)
    .evaluateAll((them) => them.map((it) => `${it.firstElementChild?.textContent} ${it.getAttribute('aria-sort')}`));

/** Presses Tab until the button of a heading has the focus. */
async function tabTo(page: Page, table: string, label: string): Promise<void> {
  for (let i = 0; i < 400; i += 1) {
    await page.keyboard.press('Tab');
    const isThere = await page.evaluate(
      ([selector, name]) =>
        document.activeElement instanceof HTMLButtonElement &&
        document.activeElement.textContent === name &&
        document.activeElement.closest(selector as string) !== null,
      [table, label],
    );
    if (isThere) return;
  }
  throw new Error(`Tab never came to ${label}`);
}

/** Values in order, gaps last: how a sorted column must look. */
const inOrder = (values: Array<number | null>, direction: 1 | -1) =>
  values.toSorted((a, b) => (a === null || b === null ? Number(a === null) - Number(b === null) : direction * (a - b)));

describe('a ranking table', () => {
  const table = '#table-desk';

  test('comes in the order of rank and says so', async () => {
    await using opened = await site.open('/');
    expect(await sortState(opened.page, table)).toEqual(['Rank ascending']);
    const ranks = await column(opened.page, table, 'Rank');
    expect(ranks).toEqual(inOrder(ranks, 1));
  });

  test('is sorted by the keyboard alone: the better end first, then the other, gaps last both ways', async () => {
    await using opened = await site.open('/');
    const { page, complaints } = opened;
    const before = await column(page, table, 'Efficiency');
    expect(before).toContain(null);
    expect(new Set(before).size).toBeGreaterThan(2);

    await tabTo(page, table, 'Efficiency');
    await page.keyboard.press('Enter');
    expect(await sortState(page, table)).toEqual(['Efficiency descending']);
    expect(await column(page, table, 'Efficiency')).toEqual(inOrder(before, -1));

    await page.keyboard.press('Space');
    expect(await sortState(page, table)).toEqual(['Efficiency ascending']);
    expect(await column(page, table, 'Efficiency')).toEqual(inOrder(before, 1));
    // The focus stays on the heading, so that a third press sorts again.
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Efficiency');

    await tabTo(page, table, 'Price');
    await page.keyboard.press('Enter');
    expect(await sortState(page, table)).toEqual(['Price ascending']);
    const prices = await column(page, table, 'Price');
    expect(prices).toEqual(inOrder(prices, 1));
    expect(complaints).toEqual([]);
  });

  test('sorts its panels by name', async () => {
    await using opened = await site.open('/');
    const { page } = opened;
    await page.locator(table).getByRole('button', { name: 'Panel' }).click();
    const names = await page.locator(`${table} tbody th a`).allTextContents();
    expect(names).toEqual(names.toSorted((a, b) => a.localeCompare(b, 'en')));
    expect(names.length).toBeGreaterThan(2);
  });

  test('sorts alone: the others keep their order', async () => {
    await using opened = await site.open('/');
    const { page } = opened;
    const names = () => page.locator('#table-palm tbody th a').allTextContents();
    const before = await names();
    await page.locator(table).getByRole('button', { name: 'Flicker' }).click();
    expect(await names()).toEqual(before);
    expect(await sortState(page, '#table-palm')).toEqual(['Rank ascending']);
  });
});

describe('a table of more rows than are kept live', () => {
  const table = 'table.ranking >> nth=0';
  const count = (page: Page) => page.locator(`${table} >> tbody tr`).count();
  const moreButton = (page: Page) => page.getByRole('button', { name: `Show all ${ROWS} rows` });

  test('keeps the first live, and sorts over all of them', async () => {
    await using opened = await site.open('/long/');
    const { page, complaints } = opened;
    expect(await count(page)).toBe(LIVE);
    expect(await column(page, table, 'Rank')).toEqual(Array.from({ length: LIVE }, (_, i) => i + 1));

    await page.locator(table).getByRole('button', { name: 'Optical power' }).click();
    expect(await count(page)).toBe(LIVE);
    expect(await column(page, table, 'Optical power')).toEqual(Array.from({ length: LIVE }, (_, i) => ROWS - 1 - i));

    await page.locator(table).getByRole('button', { name: 'Optical power' }).click();
    expect(await column(page, table, 'Optical power')).toEqual(Array.from({ length: LIVE }, (_, i) => GAPS + i));
    expect(complaints).toEqual([]);
  });

  test('sorts names with numbers in them as people count', async () => {
    await using opened = await site.open('/long/');
    const { page } = opened;
    const heading = page.locator(table).getByRole('button', { name: 'Panel' });
    await heading.click();
    await heading.click();
    const names = await page.locator(`${table} >> tbody th`).allTextContents();
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
    await page.locator(table).getByRole('button', { name: 'Rank' }).click();
    expect(await column(page, table, 'Rank')).toEqual(Array.from({ length: ROWS }, (_, i) => i + 1));
  });

  test('brings all back before it is printed', async () => {
    await using opened = await site.open('/long/');
    const { page } = opened;
    await page.locator(table).getByRole('button', { name: 'Price per watt' }).click();
    expect(await count(page)).toBe(LIVE);
    // Printing to a file sends the page the same events as a printer does.
    await page.pdf();
    expect(await count(page)).toBe(ROWS);
    expect(await column(page, table, 'Price per watt')).toEqual([
      ...Array.from({ length: ROWS - GAPS }, (_, i) => GAPS + i),
      ...Array(GAPS).fill(null),
    ]);
  });

  test('lets the browser’s own search find a row that is aside, and brings it back', async () => {
    await using opened = await site.open('/long/');
    const { page, complaints } = opened;
    const last = page.locator(`${table} >> tbody tr`).filter({ hasText: `Panel ${ROWS}` });
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

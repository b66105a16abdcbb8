import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { secondsIn, TIME } from '../support/time-in.ts';
import { type OpenSite, openSite, PHONE } from './browser.ts';
import { halfLastDigit } from './last-digit.ts';
import { attribute, pageAt, panelsJson, textOf } from './site.ts';

const data = panelsJson();

/** A time with the ends of its interval. */
const RANGE = new RegExp(String.raw`^(${TIME})\s+\((${TIME}) to (${TIME})\)$`);
const SLUG = 'fennimarsh-reed';
const ADDRESS = `/panels/${SLUG}/`;

let site: OpenSite;
beforeAll(async () => {
  site = await openSite();
});
afterAll(() => site.close());

describe('the time to a radiant exposure', () => {
  const figures = data.panels.find((it) => it.slug === SLUG)?.sessions[0]?.figures ?? {};
  const meanAt = (cm: number) => {
    const it = figures[`mean-irradiance-at-${cm}-cm`];
    if (!it || it.value === null) throw new Error(`no mean at ${cm} cm`);
    return it.value;
  };

  test('is 1000 H / E seconds for what is typed in, at every distance', async () => {
    await using opened = await site.open(ADDRESS, { viewport: PHONE });
    const { page, complaints } = opened;
    await page.getByLabel(/J\/cm² that you/).fill('12.5');
    const texts = await page.locator('td:has(> [data-seconds])').allInnerTexts();
    const cells = texts.map((it) => it.replaceAll('\u00a0', ' '));
    expect(cells).toHaveLength(6);
    [5, 10, 15, 30, 45, 60].forEach((cm, i) => {
      const seconds = (1000 * 12.5) / meanAt(cm);
      const [, shown = '', low = '', high = ''] = RANGE.exec(cells[i] ?? '') ?? [];
      // As many digits as the interval leaves, and no fewer.
      expect(Math.abs(secondsIn(shown) - seconds), cells[i]).toBeLessThan(0.02 * seconds);
      expect(secondsIn(low), cells[i]).toBeLessThan(secondsIn(shown));
      expect(secondsIn(high), cells[i]).toBeGreaterThan(secondsIn(shown));
    });
    // What was read follows too, at the mean of the grid.
    const words = (await page.locator('td a > [data-seconds]').textContent()) ?? '';
    const read = secondsIn(words.replaceAll('\u00a0', ' '));
    const exact = (1000 * 12.5) / (figures['mean-irradiance']?.value ?? Number.NaN);
    expect(Math.abs(read - exact)).toBeLessThan(0.02 * exact);
    expect(await page.locator('[data-exposure-head]').textContent()).toBe('Time for 12.5 J/cm²');
    expect(await page.locator('form[data-exposure] [role=status]').textContent()).toContain('not a recommendation');
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
    expect(complaints).toEqual([]);
  });

  test.each(['0', '-3', '1e9', 'e'])('nonsense such as %s is said to be none, and the table stays', async (typed) => {
    await using opened = await site.open(ADDRESS);
    const { page, complaints } = opened;
    const before = await page.locator('td > [data-seconds]').allInnerTexts();
    const input = page.getByLabel(/J\/cm² that you/);
    await input.fill('5');
    await input.press('Control+A');
    await input.pressSequentially(typed);
    expect(await page.locator('td > [data-seconds]').allInnerTexts()).toEqual(before);
    expect(await input.getAttribute('aria-invalid')).toBe('true');
    expect(await page.locator('form[data-exposure] [role=status]').textContent()).toMatch(/^Write a number above 0/);
    expect(complaints).toEqual([]);
  });

  test('without a script there is the time for each 1 J/cm², and nothing to type in', async () => {
    await using opened = await site.open(ADDRESS, { javaScriptEnabled: false });
    const { page } = opened;
    expect(await page.getByLabel(/J\/cm² that you/).isVisible()).toBe(false);
    expect((await page.locator('[data-exposure-head]').textContent())?.trim()).toBe('Seconds for each 1 J/cm²');
    const first = await page.locator('td > [data-seconds]').first().textContent();
    const away = Math.abs(Number.parseFloat(first ?? '') - 1000 / meanAt(5));
    expect(away).toBeLessThanOrEqual(1.001 * halfLastDigit(first ?? ''));
  });
});

describe('the ranking by emitted watt', () => {
  test('is in the order of the price per emitted watt, with the ranks of the data file', () => {
    const page = pageAt('/emitted/');
    const tables = page.document.querySelectorAll('#ranking tbody');
    expect(tables.length).toBeGreaterThan(2);
    for (const table of tables) {
      const slugs = table.querySelectorAll('tr[data-f] th > a').map((it) => attribute(it, 'href').split('/')[2]);
      const panels = slugs.map((slug) => data.panels.find((it) => it.slug === slug));
      const prices = panels.map((it) => it?.sessions[0]?.figures['price-per-emitted-watt']?.value ?? Number.NaN);
      expect(prices).toEqual(prices.toSorted((a, b) => a - b));
      expect(panels.map((it) => it?.rank_by_emitted?.place)).toEqual(panels.map((_, i) => i + 1));
    }
  });

  test('names those that have no emitted power, with the reason', () => {
    const main = pageAt('/emitted/').document.querySelector('main');
    const text = textOf(main);
    const without = data.panels.filter((it) => it.rank_by_emitted === null);
    for (const it of without) expect(text).toContain(it.rank_by_emitted_absent);
    // All others are in the tables.
    for (const it of data.panels.filter((one) => one.rank_by_emitted !== null))
      expect(main?.querySelector(`a[href="/panels/${it.slug}/"]`), it.slug).not.toBeNull();
  });
});

test('a modelled value is said to be modelled wherever it stands in a table', () => {
  const { document } = pageAt(ADDRESS);
  for (const id of ['emitted', 'distances']) {
    const heading = document.querySelector(`#${id}`);
    expect(heading).not.toBeNull();
  }
  const main = textOf(document.querySelector('main'));
  expect(main).toContain('All of it, modelled');
  expect(main).toContain('Modelled, not measured, but for what is marked as read');
});

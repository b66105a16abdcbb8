import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type OpenSite, openSite, PHONE } from './browser.ts';
import { attribute, pageAt, panelsJson, textOf } from './site.ts';

const data = panelsJson();
const page = pageAt('/plots/');

let site: OpenSite;
beforeAll(async () => {
  site = await openSite();
});
afterAll(() => site.close());

const figureOf = (slug: string, metric: string) => {
  const it = data.panels.find((panel) => panel.slug === slug)?.sessions[0]?.figures[metric];
  if (!it || it.value === null) throw new Error(`${slug}: no ${metric}`);
  return it;
};

describe('the tables behind the plots', () => {
  test.each([
    ['power-by-price', 'optical-power'],
    ['price-per-watt', 'price-per-watt'],
    ['efficiency', 'efficiency-combined'],
  ])('%s has the figures of the data files, with their intervals', (id, metric) => {
    const rows = page.document.querySelectorAll(`[data-plot="${id}"] tbody tr`);
    expect(rows.length).toBeGreaterThan(5);
    for (const row of rows) {
      const slug = attribute(row.querySelector('a'), 'href').split('/')[2] as string;
      const figure = figureOf(slug, metric);
      expect(Number(attribute(row, 'data-y')), slug).toBe(figure.value);
      expect([attribute(row, 'data-low'), attribute(row, 'data-high')].map(Number)).toEqual(figure.interval95);
    }
  });

  test('every ranked panel is in each, or is said to be missing with the reason', () => {
    for (const { slug, rank } of data.panels) {
      if (!rank) continue;
      for (const section of page.document.querySelectorAll('[data-plot]')) {
        const links = section.querySelectorAll('a').map((it) => attribute(it, 'href'));
        expect(links, slug).toContain(`/panels/${slug}/`);
      }
    }
    expect(textOf(page.document.querySelector('main'))).toContain('measured at 30 cm');
  });
});

test('nothing is drawn, and no drawing library asked for, before the reader wants it', async () => {
  await using opened = await site.open('/plots/');
  const scripts: string[] = [];
  opened.page.on('request', (it) => scripts.push(it.url()));
  await opened.page.waitForTimeout(300);
  expect(await opened.page.locator('canvas').count()).toBe(0);
  expect(scripts.filter((it) => it.includes('plot-drawing'))).toEqual([]);
});

test('each point is a link to its panel, with its numbers, over its mark; the keyboard reaches it', async () => {
  await using opened = await site.open('/plots/');
  const { page: open, complaints } = opened;
  await open.getByRole('button', { name: 'Draw the plots' }).press('Enter');
  await open.locator('canvas').nth(2).waitFor();
  const first = open.locator('[data-plot=power-by-price]');
  const rows = await first
    .locator('tbody tr')
    .evaluateAll((them) =>
      them.map((it) => ({ href: it.querySelector('a')?.getAttribute('href'), text: it.textContent ?? '' })),
    );
  const links = await first.locator('.points a').evaluateAll((them) =>
    them.map((it) => ({
      href: it.getAttribute('href'),
      label: it.getAttribute('aria-label') ?? '',
      left: Number.parseFloat((it as HTMLElement).style.left),
      top: Number.parseFloat((it as HTMLElement).style.top),
    })),
  );
  expect(links.map((it) => it.href)).toEqual(rows.map((it) => it.href));
  for (const { label } of links) expect(label).toMatch(/: €[\d,.]+, [\d.,]+ ± [\d.,]+ W(; in doubt)?$/);
  // Dearer is further right.
  expect(links.map((it) => it.left)).toEqual(links.map((it) => it.left).toSorted((a, b) => a - b));
  expect(await open.evaluate(() => document.activeElement?.closest('.points') !== null)).toBe(true);
  await open.keyboard.press('Tab');
  expect(await open.evaluate(() => document.activeElement?.getAttribute('href'))).toBe(links[1]?.href);
  await open.keyboard.press('Enter');
  await open.waitForURL(`**${links[1]?.href}`);
  expect(complaints).toEqual([]);
});

test('on a phone they fit, and follow a change to dark', async () => {
  await using opened = await site.open('/plots/', { viewport: PHONE });
  const { page: open, complaints } = opened;
  await open.getByRole('button', { name: 'Draw the plots' }).click();
  await open.locator('canvas').nth(2).waitFor();
  expect(await open.evaluate(() => document.documentElement.scrollWidth)).toBe(PHONE.width);
  await open.emulateMedia({ colorScheme: 'dark' });
  await expect.poll(() => open.locator('canvas').count()).toBe(3);
  const wide = await open
    .locator('canvas')
    .first()
    .evaluate((it) => it.getBoundingClientRect().right);
  expect(wide).toBeLessThanOrEqual(PHONE.width);
  expect(complaints).toEqual([]);
});

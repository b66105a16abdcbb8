import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { slugOf } from '../../src/site/guide/browser/row-data.ts';
import { DESK, type OpenSite, openSite, PHONE } from './browser.ts';
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

test('the first plot stands on the first screen, on a phone and at a desk', async () => {
  await using opened = await site.open('/plots/');
  const { page: open } = opened;
  await open.locator('canvas').nth(2).waitFor();
  for (const viewport of [DESK, PHONE]) {
    await open.setViewportSize(viewport);
    const bottom = () =>
      open
        .locator('canvas')
        .first()
        .evaluate((it) => it.getBoundingClientRect().bottom);
    await expect.poll(bottom, { message: String(viewport.width) }).toBeLessThan(viewport.height);
  }
});

test('each point is a button with its numbers, over its mark; picked points lead to the comparison', async () => {
  await using opened = await site.open('/plots/');
  const { page: open, complaints } = opened;
  await open.locator('canvas').nth(2).waitFor();
  const first = open.locator('[data-plot=power-by-price]');
  const slugs = await first
    .locator('tbody tr')
    .evaluateAll((them) => them.map((it) => (it as HTMLElement).dataset.f?.split('|')[0]));
  const points = await first.locator('.points button').evaluateAll((them) =>
    them.map((it) => ({
      slug: (it as HTMLElement).dataset.point,
      label: it.getAttribute('aria-label') ?? '',
      left: Number.parseFloat((it as HTMLElement).style.left),
    })),
  );
  expect(points.map((it) => it.slug)).toEqual(slugs);
  for (const { label } of points) expect(label).toMatch(/: €[\d,.]+, [\d.,]+ ± [\d.,]+ W(; in doubt)?$/);
  // Dearer is further right.
  expect(points.map((it) => it.left)).toEqual(points.map((it) => it.left).toSorted((a, b) => a - b));

  const bar = open.locator('[data-plots-picked]');
  // A finger picks the nearest of points that lie on one another.
  for (const at of [0, 1]) {
    const box = await first.locator('.points button').nth(at).boundingBox();
    if (!box) throw new Error('the point is not there');
    await open.mouse.click(box.x + 12, box.y + 12);
    expect(await bar.locator('a').first().getAttribute('href')).toBe(`/panels/${slugs[at]}/`);
    await bar.getByRole('button', { name: 'Clear' }).click();
    expect(await bar.isVisible()).toBe(false);
  }
  await first.locator('.points button').first().focus();
  await open.keyboard.press('Enter');
  expect(await bar.locator('a').first().getAttribute('href')).toBe(`/panels/${slugs[0]}/`);
  expect(await bar.textContent()).toContain('Pick another to compare.');
  await open.keyboard.press('ArrowRight');
  await open.keyboard.press('Space');
  // Pressed in every plot that has the panel.
  const pressed = open.locator('[data-point][aria-pressed=true]');
  expect(new Set(await pressed.evaluateAll((them) => them.map((it) => (it as HTMLElement).dataset.point)))).toEqual(
    new Set(slugs.slice(0, 2)),
  );
  expect(await pressed.count()).toBeGreaterThan(2);
  await bar.getByRole('link', { name: 'Compare them' }).press('Enter');
  await open.waitForURL(`**/compare/?with=${slugs.slice(0, 2).join(',')}`);
  expect(complaints).toEqual([]);
});

test('the guide’s filters hold, are named, and lead back', async () => {
  const address = '?class=desk&price-to=300';
  await using opened = await site.open(`/plots/${address}`);
  const { page: open, complaints } = opened;
  await open.locator('canvas').nth(2).waitFor();
  const wanted = page.document
    .querySelectorAll('[data-plot="power-by-price"] tbody tr')
    .filter((it) => attribute(it, 'data-class') === 'desk' && Number(attribute(it, 'data-x')) <= 300)
    .map((it) => slugOf(attribute(it, 'data-f')));
  expect(wanted.length).toBeGreaterThan(0);
  const drawn = await open
    .locator('[data-plot=price-per-watt] .points button')
    .evaluateAll((them) => them.map((it) => (it as HTMLElement).dataset.point));
  expect(drawn.toSorted()).toEqual(wanted.toSorted());
  const said = open.locator('[data-plots-filters]');
  expect(await said.textContent()).toMatch(/^\d+ of \d+ panels, by the guide’s filters: price up to €300; Desk\. /);
  expect(await said.locator('a').first().getAttribute('href')).toBe(`/${address}`);
  expect(complaints).toEqual([]);
});

test('filters that leave nothing are told, and odd ones do no harm', async () => {
  await using opened = await site.open('/plots/?price-to=1&class=%3Cimg%20src%3Dx%3E&sort=a.b&foo=1');
  const { page: open, complaints } = opened;
  await open.getByText('The filters leave no panel here.').first().waitFor();
  expect(await open.locator('[data-plots-filters]').textContent()).toContain('0 of ');
  expect(await open.locator('main img').count()).toBe(0);
  expect(complaints).toEqual([]);
});

test('without a script the tables stand, and no room is kept for a drawing', async () => {
  await using opened = await site.open('/plots/', { javaScriptEnabled: false });
  const { page: open } = opened;
  expect(
    await open
      .locator('.chart')
      .first()
      .evaluate((it) => it.getBoundingClientRect().height),
  ).toBe(0);
  await open.locator('[data-plot] summary').first().click();
  expect(await open.locator('[data-plot] table').first().isVisible()).toBe(true);
});

test('on a phone they fit, and follow a change to dark', async () => {
  await using opened = await site.open('/plots/', { viewport: PHONE });
  const { page: open, complaints } = opened;
  await open.locator('canvas').nth(2).waitFor();
  expect(await open.evaluate(() => document.documentElement.scrollWidth)).toBe(PHONE.width);
  await open.locator('.points button').first().press('Enter');
  await open.emulateMedia({ colorScheme: 'dark' });
  await expect.poll(() => open.locator('canvas').count()).toBe(3);
  expect(await open.locator('.points button').first().getAttribute('aria-pressed')).toBe('true');
  const wide = await open
    .locator('canvas')
    .first()
    .evaluate((it) => it.getBoundingClientRect().right);
  expect(wide).toBeLessThanOrEqual(PHONE.width);
  expect(complaints).toEqual([]);
});

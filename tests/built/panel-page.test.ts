import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { DESK, NARROWEST, type OpenSite, openSite, PHONE } from './browser.ts';
import { attribute, PANEL_FILES, pageAt, textOf } from './site.ts';

const shown = PANEL_FILES.filter((it) => it.data.status !== 'draft').map((it) => it.slug);
const address = (slug: string) => `/panels/${slug}/`;

let site: OpenSite;
beforeAll(async () => {
  site = await openSite();
});
afterAll(() => site.close());

/** Parts that do not end within the window as it is opened. */
async function beyondWindow(page: Page, parts: readonly string[]): Promise<string[]> {
  const found = await Promise.all(
    parts.map(async (part) => {
      const place = await page
        .locator(part)
        .first()
        .evaluate((it) => ({ bottom: it.getBoundingClientRect().bottom, height: innerHeight }));
      return { part, ...place };
    }),
  );
  return found.filter((it) => it.bottom > it.height).map((it) => `${it.part} ends at ${Math.round(it.bottom)}`);
}

describe('the first screen', () => {
  test.each(shown)(
    'of %s has the figures, where they stand, the panel to scale and the ways on at a desk, and the first of them on a phone',
    async (slug) => {
      await using opened = await site.open(address(slug), { viewport: DESK });
      const parts = ['h1', '.head-figures', '.panel-head .lines', '.to-scale', '.ways', '#cautions-called'];
      expect(await beyondWindow(opened.page, parts)).toEqual([]);
      await opened.page.setViewportSize(PHONE);
      const first = ['h1', '.head-figures > div', '.panel-head .lines > li'];
      expect(await beyondWindow(opened.page, first)).toEqual([]);
    },
  );

  test('on a phone has the eyes’ line, which a desk need not repeat', async () => {
    const eyes = '.panel-head .soon';
    await using opened = await site.open(address('kelpwright-gannet'), { viewport: PHONE });
    const { page } = opened;
    expect(await page.locator(eyes).isVisible()).toBe(true);
    expect(await beyondWindow(page, [eyes])).toEqual([]);
    await page.setViewportSize(DESK);
    expect(await page.locator(eyes).isVisible()).toBe(false);
  });
});

test.each(shown)('the contents of %s lead to parts of the page, in its order', (slug) => {
  const { document } = pageAt(address(slug));
  const links = document.querySelectorAll('nav.contents a').map((it) => attribute(it, 'href'));
  expect(links.length).toBeGreaterThan(5);
  for (const it of links) {
    expect(it).toMatch(/^#/);
    expect(document.querySelector(it), it).not.toBeNull();
  }
});

test.each(shown)('a mark of doubt on the page of %s leads to the doubt, in sight of the figures', (slug) => {
  const { document } = pageAt(address(slug));
  const marks = document.querySelectorAll('.head-figures a.dagger').filter((it) => attribute(it, 'href') === '#flags');
  if (marks.length === 0) return;
  expect(textOf(document.querySelector('.panel-head #flags'))).toMatch(/[†‡]/);
});

test.each(['kelpwright-cormorant', 'fennimarsh-reed', 'ostrel-lill'])(
  'prices, claims and sessions of %s need no sideways scrolling on the narrowest screen',
  async (slug) => {
    await using opened = await site.open(address(slug), { viewport: NARROWEST });
    const wide = await opened.page.evaluate(() =>
      [document.documentElement, ...document.querySelectorAll('.told .sheet')]
        .filter((it) => it.scrollWidth > it.clientWidth)
        .map((it) => it.getAttribute('aria-label') ?? it.tagName),
    );
    expect(wide).toEqual([]);
  },
);

test('a price of the reader’s own is asked for where a script can calculate with it', async () => {
  const form = 'form[data-own-price]';
  await using opened = await site.open(address('kelpwright-gannet'));
  await opened.page.locator(form).getByRole('spinbutton').fill('500');
  await opened.page.locator(form).getByRole('button').click();
  await expect.poll(() => new URL(opened.page.url()).search).toBe('?own.kelpwright-gannet=500');
  await using without = await site.open(address('kelpwright-gannet'), { javaScriptEnabled: false });
  expect(await without.page.locator(form).isVisible()).toBe(false);
});

test('old addresses of parts still lead to them', () => {
  const { document } = pageAt(address('ruddlestone-r150'));
  for (const id of [
    'figures',
    'cautions-called',
    'notes',
    'flags',
    'claims',
    'grid',
    'step-ups',
    'prices',
    'sessions',
    'panel',
  ]) {
    expect(document.querySelector(`#${id}`), id).not.toBeNull();
  }
});

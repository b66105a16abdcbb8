/** Pages where they are no screen in light: printed, in forced colours, and zoomed to 400 %. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { bringChecker, COLOURS, excess, violations } from './accessibility-checker.ts';
import { DESK, type OpenSite, openSite } from './browser.ts';
import { PAGES, PANEL_FILES } from './site.ts';

const COMPARED = '/compare/?with=kelpwright-gannet,quennick-tope';
const PLANNED = '/plan/?panel=kelpwright-cormorant&exposure=12&cm=25';
const KINDS = [
  '/',
  '/panels/kelpwright-gannet/',
  '/panels/quennick-sprat/',
  '/panels/kelpwright-cormorant/methodology/',
  COMPARED,
  PLANNED,
  '/methods/',
  '/methods/emitted-power/',
  '/cautions/',
  '/instruments/',
  '/panels/',
  '/search/?q=irradiance',
];

let site: OpenSite;
beforeAll(async () => {
  site = await openSite();
});
afterAll(() => site.close());

/** Waits for what a page shows by its address. */
async function comeWhole(page: Page, address: string): Promise<void> {
  if (address === COMPARED) await page.locator('main table').first().waitFor();
  if (address === PLANNED) await page.locator('[data-plan-result] .person').waitFor();
  if (address.startsWith('/search/')) await page.locator('#found li').first().waitFor();
}

/** How many sheets of A4 a page takes. */
async function sheets(address: string): Promise<number> {
  await using opened = await site.open(address);
  await comeWhole(opened.page, address);
  await opened.page.evaluate(() => document.fonts.ready);
  const pdf = await opened.page.pdf({ preferCSSPageSize: true });
  return pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0;
}

const lengthOf = (slug: string) => PAGES.find((it) => it.address === `/panels/${slug}/`)?.html.length ?? 0;

describe('on paper', () => {
  // Those with most on their pages: whatever fits there fits for the others.
  const shown = PANEL_FILES.map((it) => it.slug)
    .toSorted((a, b) => lengthOf(b) - lengthOf(a))
    .slice(0, 4);

  test.each(shown)('%s takes at most three sheets', async (slug) => {
    const taken = await sheets(`/panels/${slug}/`);
    expect(taken).toBeGreaterThan(0);
    expect(taken).toBeLessThanOrEqual(3);
  });

  test.each([
    ['/', 2],
    ['/panels/ostrel-vagg/files/', 4],
    ['/panels/kelpwright-cormorant/methodology/', 8],
    ['/agreement/', 1],
  ])('%s takes at most %i', async (address, most) => {
    const taken = await sheets(address);
    expect(taken).toBeGreaterThan(0);
    expect(taken).toBeLessThanOrEqual(most);
  });

  test('what is printed as it was left stays folded, and says that it is left out', async () => {
    await using opened = await site.open('/panels/ostrel-vagg/files/');
    const { page } = opened;
    const folds = page.locator('.as-left details:not(.by > *)');
    await folds.first().evaluate((it: HTMLDetailsElement) => {
      it.open = true;
    });
    await page.emulateMedia({ media: 'print' });
    await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
    expect(await page.locator('.as-left details[open]').count()).toBe(1);
    expect(await folds.first().isVisible()).toBe(true);
    expect(await folds.nth(1).isVisible()).toBe(false);
    expect(await page.locator('.on-paper').isVisible()).toBe(true);
    // A figure keeps its line.
    expect(await page.locator('.by summary').first().isVisible()).toBe(true);
  });

  test.each(['/', '/panels/kelpwright-gannet/'])('%s opens its folds, and closes them again', async (address) => {
    await using opened = await site.open(address);
    const open = () => opened.page.locator('main details[open]').count();
    const before = await open();
    await opened.page.evaluate(() => dispatchEvent(new Event('beforeprint')));
    expect(await opened.page.locator('main details:not([open])').count()).toBe(0);
    await opened.page.evaluate(() => dispatchEvent(new Event('afterprint')));
    expect(await open()).toBe(before);
  });
});

/** What can be pressed or chosen, and marks of folding, as far as they are seen. */
function pressable(): string[] {
  const isSeen = (it: Element) => it.checkVisibility({ visibilityProperty: true, opacityProperty: true });
  // Text of a table's head, and what covers points of a plot, print as no control.
  const controls = [...document.querySelectorAll('input, select, button, nav a, .units')].filter(
    (it) => isSeen(it) && !it.matches('th button, .points button'),
  );
  const marks = [...document.querySelectorAll('summary')].filter(
    (it) =>
      isSeen(it) &&
      (getComputedStyle(it).listStyleType !== 'none' || /[▸▾]/.test(getComputedStyle(it, '::before').content)),
  );
  return [...controls, ...marks].map((it) => it.outerHTML.slice(0, 120));
}

describe.each([
  ...KINDS,
  '/emitted/',
  '/plots/',
  '/plan/?panel=kelpwright-gannet',
  '/bench/sheet/?panel=quennick-tope',
])('%s', (address) => {
  test('has nothing sideways at 400 %, and nothing to press or choose on paper, nor a mark of folding', async () => {
    await using opened = await site.open(address, { viewport: { width: 320, height: 256 } });
    const { page } = opened;
    await comeWhole(page, address);
    for (const viewport of [
      { width: 320, height: 256 },
      { width: 360, height: 225 },
    ]) {
      await page.setViewportSize(viewport);
      await expect.poll(() => excess(page), { message: `${viewport.width}` }).toBe(0);
    }
    await page.setViewportSize(DESK);
    await page.emulateMedia({ media: 'print' });
    await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
    expect(await page.evaluate(pressable)).toEqual([]);
  });
});

describe('in forced colours', () => {
  // All else that the checker looks at is the same as in colour, where it has looked already.
  test.each(KINDS)('%s has no fault of colour, and its drawings have none but the reader’s', async (address) => {
    await using opened = await site.open(address, { forcedColors: 'active' });
    await comeWhole(opened.page, address);
    await bringChecker(opened.page);
    expect(await violations(opened.page, COLOURS)).toEqual([]);
    const own = await opened.page.evaluate(() => {
      const probe = document.createElement('i');
      document.body.append(probe);
      const system = [
        'Canvas',
        'CanvasText',
        'LinkText',
        'GrayText',
        'VisitedText',
        'ActiveText',
        'ButtonText',
        'Highlight',
      ].map((it) => {
        probe.style.color = it;
        return getComputedStyle(probe).color;
      });
      probe.remove();
      const shapes = [...document.querySelectorAll('main svg :is(path, line, rect, circle, use, text)')];
      return shapes.flatMap((it) => {
        const { fill, stroke } = getComputedStyle(it);
        return [fill, stroke]
          .filter((colour) => colour.startsWith('rgb') && !system.includes(colour))
          .map((colour) => `${it.getAttribute('class')} ${colour}`);
      });
    });
    expect([...new Set(own)]).toEqual([]);
  });
});

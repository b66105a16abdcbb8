import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { DESK, NARROWEST, type OpenSite, openSite, PHONE } from './browser.ts';
import { panelsJson } from './site.ts';

const data = panelsJson();
const ranked = data.panels.filter((it) => it.rank !== null);
const flagged = data.panels.find((it) => (it.sessions[0]?.flags.length ?? 0) > 0)?.slug as string;

let site: OpenSite;
beforeAll(async () => {
  site = await openSite();
});
afterAll(() => site.close());

/** Cells of the ranking, row by row, as a reader sees them; the drawn interval has no words. */
async function rankingRows(page: Page): Promise<string[][]> {
  const rows = await page.locator('table.ranking tbody tr[data-f]:visible').all();
  const cells = await Promise.all(rows.map((row) => row.locator('th, td:not([aria-hidden="true"])').allInnerTexts()));
  // On the screen a button picks the row for the comparison; a mark of doubt stands off its figure, for fingers.
  return cells.map((row) =>
    row.map((it) =>
      it
        .replace(/\n(✓ )?compare$/, '')
        .replace(/\s*([†‡])/g, '$1')
        .trim(),
    ),
  );
}

describe('where scripts are off', () => {
  test('the ranking is complete and in the order of rank', async () => {
    await using opened = await site.open('/', { javaScriptEnabled: false });
    const { page, complaints } = opened;
    const rows = await rankingRows(page);
    expect(rows).toHaveLength(ranked.length);
    expect(rows.flat().filter((it) => it.trim() === '')).toEqual([]);
    const bodies = await page
      .locator('table.ranking tbody')
      .evaluateAll((them) =>
        them.map((it) => [...it.querySelectorAll('tr[data-f] th a')].map((a) => a.getAttribute('href')?.split('/')[2])),
      );
    expect(bodies.length).toBeGreaterThan(2);
    for (const slugs of bodies) {
      const places = slugs.map((slug) => ranked.find((it) => it.slug === slug)?.rank?.place);
      expect(places).toEqual(slugs.map((_, i) => i + 1));
    }
    // Buttons would do nothing.
    expect(await page.getByRole('button').count()).toBe(0);
    expect(complaints).toEqual([]);
  });

  test('a panel’s page reads the same as with them', async () => {
    const text = async (javaScriptEnabled: boolean) => {
      await using opened = await site.open(`/panels/${flagged}/`, { javaScriptEnabled });
      // What asks the reader for a number needs a script, and hides itself without one.
      await opened.page.locator('.asked').evaluateAll((them) => them.map((it) => it.remove()));
      return await opened.page.locator('main').allInnerTexts();
    };
    const without = await text(false);
    expect(without[0]?.length).toBeGreaterThan(2000);
    expect(without).toEqual(await text(true));
  });
});

describe('printed', () => {
  /** A4 upright between the margins of `print.css`, at 96 pixels an inch. */
  const PAPER = { width: 688, height: 1024 };

  test('the guide has all rows and no navigation', async () => {
    await using opened = await site.open('/');
    const { page } = opened;
    expect(await page.locator('.masthead nav a').first().isVisible()).toBe(true);
    const onScreen = await rankingRows(page);
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.masthead nav a').first().isVisible()).toBe(false);
    expect(await page.locator('.skip').isVisible()).toBe(false);
    expect(await rankingRows(page)).toEqual(onScreen);
    expect(onScreen).toHaveLength(ranked.length);
  });

  test('what is folded on the screen is open, without the mark of folding', async () => {
    await using opened = await site.open(`/panels/${flagged}/`);
    const { page } = opened;
    const folded = page.locator('main details:not([open])');
    const seen = () =>
      folded.evaluateAll((them) =>
        them.map((it) => {
          const inside = it.querySelector(':scope > :not(summary)');
          const mark = getComputedStyle(it.querySelector('summary') ?? it).listStyleType;
          return { name: it.className, isOpen: inside?.checkVisibility() === true, mark };
        }),
      );
    const onScreen = await seen();
    expect(onScreen.length).toBeGreaterThan(1);
    for (const it of onScreen) expect(it).toMatchObject({ isOpen: false, mark: expect.not.stringMatching('none') });
    await page.emulateMedia({ media: 'print' });
    // Sources of the limits are as long as a page: paper says where they stand. Maps of the grid, whose numbers stand
    // on paper already, and how the page is cited are for the screen.
    const left = ['sources', 'on-screen', 'cite'];
    const onPaper = (await seen()).filter((it) => !left.includes(it.name));
    expect(onPaper.length).toBeGreaterThan(0);
    for (const it of onPaper) expect(it).toMatchObject({ isOpen: true, mark: 'none' });
    expect(onScreen.length - onPaper.length).toBe(onScreen.filter((it) => left.includes(it.name)).length);
    expect(await page.locator('.on-paper').isVisible()).toBe(true);
    expect(await page.locator('.on-paper').textContent()).toContain(`/panels/${flagged}/`);
  });

  test('the pages are upright A4 between margins, and numbered', async () => {
    await using opened = await site.open(`/panels/${flagged}/`);
    const { page } = opened;
    const rule = await page.evaluate(() =>
      [...document.styleSheets]
        .flatMap((sheet) => [...sheet.cssRules])
        .filter((it) => it instanceof CSSPageRule)
        .map((it) => it.cssText.replaceAll(/\s+/g, ' ')),
    );
    expect(rule).toEqual([
      expect.stringMatching(/size: a4;.*margin: 12mm 14mm 14mm;|margin: 12mm 14mm 14mm;.*size: a4;/i),
    ]);
    expect(rule[0]).toContain('counter(page)');
  });

  test.each(['/', `/panels/${flagged}/`, `/panels/${flagged}/methodology/`])(
    '%s is dark on white, whatever the screen',
    async (address) => {
      await using opened = await site.open(address, { colorScheme: 'dark' });
      const { page } = opened;
      await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
      const ink = await page.locator('h1').evaluate((it) => getComputedStyle(it).color);
      const [red = 255, green = 255, blue = 255] = (ink.match(/[\d.]+/g) ?? []).map(Number);
      expect(red + green + blue).toBeLessThan(3 * 80);
      const paper = await page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
      expect(paper).toBe('rgba(0, 0, 0, 0)');
    },
  );

  // Browsers shrink a page that is wider than its paper, which is no help where the type gets too small to read.
  test.each(['/', `/panels/${flagged}/`, `/panels/${flagged}/methodology/`])(
    '%s is still legible when shrunk to the width of the paper',
    async (address) => {
      await using opened = await site.open(address, { viewport: PAPER });
      const { page } = opened;
      await page.emulateMedia({ media: 'print' });
      const { width, smallest } = await page.locator('main').evaluate((main) => {
        const texts = [...main.querySelectorAll('th, td, small, p, li')].filter((it) => it.getClientRects().length > 0);
        const edges = [...main.querySelectorAll('table')].map((it) => it.getBoundingClientRect().right);
        const sizes = texts.map((it) => Number.parseFloat(getComputedStyle(it).fontSize));
        return { width: Math.max(innerWidth, ...edges), smallest: Math.min(...sizes) };
      });
      const points = (smallest * 72) / 96;
      expect(points * (PAPER.width / width)).toBeGreaterThanOrEqual(6);
    },
  );
});

describe('by the keyboard', () => {
  test('the first stop skips the navigation', async () => {
    await using opened = await site.open('/');
    const { page } = opened;
    const skip = page.getByRole('link', { name: 'To the content' });
    expect(await skip.evaluate((it) => it.getBoundingClientRect().right)).toBeLessThan(0);
    await page.keyboard.press('Tab');
    expect(await skip.evaluate((it) => it === document.activeElement)).toBe(true);
    expect(await skip.evaluate((it) => it.getBoundingClientRect().left)).toBeGreaterThanOrEqual(0);
    await page.keyboard.press('Enter');
    expect(new URL(page.url()).hash).toBe('#main');
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.closest('main') !== null)).toBe(true);
  });

  test.each([
    ['/', DESK],
    ['/', PHONE],
    [`/panels/${flagged}/`, PHONE],
    ['/cautions/', NARROWEST],
  ])('every stop of %s at %o is outlined and in sight, under nothing else', async (address, viewport) => {
    await using opened = await site.open(address, { viewport, reducedMotion: 'reduce' });
    const { page } = opened;
    const faults: string[] = [];
    const stops = await page.locator('a[href], button, input, summary, [tabindex="0"]').count();
    expect(stops).toBeGreaterThan(10);
    for (let i = 0; i < Math.min(stops, 80); i += 1) {
      await page.keyboard.press('Tab');
      const fault = await page.evaluate(focusFault);
      if (fault) faults.push(fault);
    }
    expect([...new Set(faults)]).toEqual([]);
  });
});

/** Runs in the page: what is wrong with how the element in focus is seen. */
function focusFault(): string | undefined {
  const element = document.activeElement;
  if (!(element instanceof HTMLElement) || element === document.body) return undefined;
  const name = `${element.tagName} ${element.getAttribute('aria-label') ?? element.textContent?.trim().slice(0, 40)}`;
  const style = getComputedStyle(element);
  if (style.outlineStyle === 'none' || Number.parseFloat(style.outlineWidth) < 2) return `${name} has no outline`;
  // Of a link over two lines, or a table wider than the window, the first part in sight is enough.
  const inSight = [...element.getClientRects()].filter(
    (it) => it.bottom > 0 && it.top < innerHeight && it.right > 0 && it.left < innerWidth,
  );
  if (inSight.length === 0) return `${name} is out of sight`;
  const isSeen = inSight.some((it) => {
    const x = Math.min(Math.max((it.left + it.right) / 2, 1), innerWidth - 1);
    const y = Math.min(Math.max((it.top + it.bottom) / 2, 1), innerHeight - 1);
    const top = document.elementFromPoint(x, y);
    return top !== null && (element.contains(top) || top.contains(element));
  });
  return isSeen ? undefined : `${name} is under something else`;
}

describe('as the reader’s system asks', () => {
  test.each(['/', `/panels/${flagged}/`, '/search/'])('%s keeps to forced colours', async (address) => {
    await using opened = await site.open(address, { forcedColors: 'active', reducedMotion: 'reduce' });
    const { page, complaints } = opened;
    expect(await page.evaluate(() => matchMedia('(forced-colors: active)').matches)).toBe(true);
    const opted = await page.evaluate(() =>
      [...document.querySelectorAll('*')]
        .filter((it) => getComputedStyle(it).forcedColorAdjust === 'none' && !(it instanceof SVGElement))
        .map((it) => it.outerHTML.slice(0, 80)),
    );
    expect(opted).toEqual([]);
    await page.keyboard.press('Tab');
    expect(await page.evaluate(focusFault)).toBeUndefined();
    expect(complaints).toEqual([]);
  });

  test.each(['/', `/panels/${flagged}/`, '/search/'])(
    '%s moves nothing where motion is not wanted',
    async (address) => {
      const moving = async (reducedMotion: 'reduce' | 'no-preference') => {
        await using opened = await site.open(address, { reducedMotion });
        expect(opened.complaints).toEqual([]);
        return await opened.page.evaluate(
          () =>
            [document.documentElement, ...document.body.querySelectorAll('*')]
              .map((it) => getComputedStyle(it))
              .filter(
                (it) => it.scrollBehavior === 'smooth' || it.animationName !== 'none' || it.transitionDuration !== '0s',
              ).length,
        );
      };
      expect(await moving('reduce')).toBe(0);
      // The page itself scrolls smoothly for everyone else, so the other answer is there to be seen.
      expect(await moving('no-preference')).toBeGreaterThan(0);
    },
  );

  test.each(['light', 'dark'] as const)('colours are %s', async (colorScheme) => {
    await using opened = await site.open('/', { colorScheme });
    const colour = await opened.page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
    const lightness = (colour.match(/\d+/g) ?? []).slice(0, 3).reduce((sum, it) => sum + Number(it), 0) / 3;
    if (colorScheme === 'light') expect(lightness).toBeGreaterThan(230);
    else expect(lightness).toBeLessThan(60);
  });
});

test('an address with a figure’s anchor brings that figure into sight', async () => {
  await using opened = await site.open(`/panels/${flagged}/methodology/#led-area`, { reducedMotion: 'reduce' });
  const top = await opened.page.locator('#led-area').evaluate((it) => it.getBoundingClientRect().top);
  expect(top).toBeGreaterThanOrEqual(0);
  expect(top).toBeLessThan(DESK.height);
});

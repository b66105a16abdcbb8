import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { DESK, NARROWEST, type OpenSite, openSite, PHONE } from './browser.ts';
import { pageAt, panelsJson } from './site.ts';

let site: OpenSite;
beforeAll(async () => {
  site = await openSite();
});
afterAll(() => site.close());

const data = panelsJson();
const LOOKS = [
  ['a desk', DESK, 'wide'],
  ['a phone', PHONE, 'narrow'],
  ['the narrowest window', NARROWEST, 'narrow'],
] as const;

describe.each(LOOKS)('the picture of all panels on %s', (_, viewport, name) => {
  test('is one of two, fits, and no two of its names, words or marks overlap', async () => {
    await using opened = await site.open('/', { viewport, javaScriptEnabled: false });
    const { page, complaints } = opened;
    const drawings = page.locator('.picture > svg[role=group]');
    expect(await drawings.count()).toBe(2);
    const drawn = page.locator('.picture > svg[role=group]:visible');
    expect(await drawn.count()).toBe(1);
    expect(await drawn.getAttribute('class')).toBe(`picture-${name}`);
    const found = await drawn.evaluate((svg) => {
      const frame = svg.getBoundingClientRect();
      const boxOf = (it: Element) => {
        const { left, top, right, bottom } = it.getBoundingClientRect();
        // A line of words is higher than its letters.
        const trim = it.tagName === 'text' ? (bottom - top) * 0.2 : 0;
        return { what: it.textContent ?? '', left, right, top: top + trim, bottom: bottom - trim };
      };
      const names = [...svg.querySelectorAll('a text')].map(boxOf);
      const others = [...svg.querySelectorAll(':scope > .x, :scope > .y')].map(boxOf);
      const all = [...names, ...others];
      const meeting = all.flatMap((a, i) =>
        all
          .slice(i + 1)
          .filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
          .map((b) => `${a.what} / ${b.what}`),
      );
      const out = all.filter((it) => it.left < frame.left - 1 || it.right > frame.right + 1).map((it) => it.what);
      return { names: names.length, meeting, out };
    });
    expect(found).toEqual({ names: expect.any(Number), meeting: [], out: [] });
    expect(found.names).toBeGreaterThan(8);
    expect(complaints).toEqual([]);
  });
});

test('each mark is a link that tells the figures of its panel, in the order of prices', async () => {
  await using opened = await site.open('/');
  const { page } = opened;
  const picture = page.getByRole('group', { name: 'Price against optical power' });
  const links = await picture.getByRole('link').all();
  const slugs: string[] = [];
  for (const it of links) slugs.push((await it.getAttribute('href'))?.split('/')[2] ?? '');
  expect(slugs.length).toBeGreaterThan(8);
  const ranked = data.panels.filter((it) => it.rank).map((it) => it.slug);
  expect(slugs.filter((it) => !ranked.includes(it))).toEqual([]);
  // The names that the browser tells to those who listen.
  const told = await picture.ariaSnapshot();
  expect(told.match(/link "[^"]+: €[\d.,]+, [\d.,]+ W, €[\d.,]+ a watt(; in doubt)?"/g)).toHaveLength(slugs.length);
  await picture
    .getByRole('link', { name: /^Kelpwright Gannet: €849, 207 W, €4\.10 a watt$/ })
    .waitFor({ timeout: 5000 });
  const prices = slugs.map((slug) => {
    const it = data.panels.find((panel) => panel.slug === slug)?.sessions[0]?.figures['real-price'];
    return it && it.value !== null ? it.value : Number.NaN;
  });
  expect(prices).toEqual(prices.toSorted((a, b) => a - b));
});

test('the keyboard reaches the marks one after another, and follows them', async () => {
  await using opened = await site.open('/', { javaScriptEnabled: false });
  const { page } = opened;
  await page.locator('.first .line a', { hasText: 'Cautions' }).focus();
  const seen: Array<string | null> = [];
  for (let i = 0; i < 3; i++) {
    await page.keyboard.press('Tab');
    const focused = page.locator('a:focus');
    seen.push(await focused.getAttribute('href'));
    const box = await focused.boundingBox();
    expect((box?.width ?? 0) > 5 && (box?.height ?? 0) > 5).toBe(true);
    expect(await focused.evaluate((it) => getComputedStyle(it).outlineStyle)).toBe('solid');
  }
  const drawn = await page.locator('.picture-wide a').evaluateAll((them) => them.map((it) => it.getAttribute('href')));
  expect(seen).toEqual(drawn.slice(0, 3));
  await page.keyboard.press('Enter');
  await page.waitForURL(`**${seen[2]}`);
});

test('a mark answers the pointer at its middle, or where its name is', async () => {
  await using opened = await site.open('/');
  const missed = await opened.page.locator('.picture-wide a').evaluateAll((them) => {
    them[0]?.closest('svg')?.scrollIntoView({ block: 'center', behavior: 'instant' });
    return them.flatMap((it) => {
      const hits = [...it.querySelectorAll('use, text')].map((part) => {
        const { left, right, top, bottom } = part.getBoundingClientRect();
        return document.elementFromPoint((left + right) / 2, (top + bottom) / 2)?.closest('a') === it;
      });
      return hits.some(Boolean) ? [] : [it.textContent];
    });
  });
  expect(missed).toEqual([]);
});

test('its frontier is a table too, which its address and print open', async () => {
  await using opened = await site.open('/#frontier');
  const { page } = opened;
  const table = page.locator('[data-frontier] table');
  await expect.poll(() => table.isVisible()).toBe(true);
  await page.goto(site.origin);
  expect(await table.isVisible()).toBe(false);
  await page.emulateMedia({ media: 'print' });
  expect(await table.isVisible()).toBe(true);
});

test('what is not in it is named', async () => {
  const { html } = pageAt('/');
  const line = /Not in the picture\..*?<\/p>/.exec(html)?.[0] ?? '';
  expect(line).toContain('/panels/ostrel-bord/');
  expect(line).toContain('measured at 30 cm');
});

test('paper has the wide one, whatever the window', async () => {
  await using opened = await site.open('/', { viewport: PHONE });
  const { page } = opened;
  await page.emulateMedia({ media: 'print' });
  const shown = await page
    .locator('.picture > svg[role=group]:visible')
    .evaluateAll((them) => them.map((it) => it.getAttribute('class')));
  expect(shown).toEqual(['picture-wide']);
});

test('in forced colours words and marks are in the system’s', async () => {
  await using opened = await site.open('/', { forcedColors: 'active' });
  const { page } = opened;
  const styles = await page.locator('.picture-wide').evaluate((svg) => {
    const probe = document.createElement('span');
    document.body.append(probe);
    const system = (name: string) => {
      probe.style.setProperty('color', name);
      return getComputedStyle(probe).color;
    };
    const of = (selector: string, property: 'fill' | 'stroke') => {
      const it = svg.querySelector(selector);
      return it ? getComputedStyle(it)[property] : '';
    };
    return {
      word: [of('.x', 'fill'), system('CanvasText')],
      name: [of('a text', 'fill'), system('LinkText')],
      mark: [of('a use', 'stroke'), system('LinkText')],
      stairs: [of('.stairs', 'stroke'), system('CanvasText')],
    };
  });
  for (const [what, [drawn, wanted]] of Object.entries(styles)) expect(drawn, what).toBe(wanted);
});

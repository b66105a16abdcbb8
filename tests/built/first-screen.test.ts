/** The guide's first screen: its answer, and the answer to a sum, without a scroll. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { DESK, NARROWEST, type OpenSite, openSite, PHONE } from './browser.ts';
import { panelsJson } from './site.ts';

let site: OpenSite;
beforeAll(async () => {
  site = await openSite();
});
afterAll(() => site.close());

const WINDOWS = [
  ['a phone', PHONE],
  ['a desk', DESK],
] as const;
const ranked = panelsJson().panels.filter((it) => it.rank !== null);
const priceIn = (it: (typeof ranked)[number]) => {
  const figure = it.sessions[0]?.figures['real-price'];
  return figure && figure.value !== null ? figure.value : Number.NaN;
};

describe.each(WINDOWS)('on %s', (_, viewport) => {
  test.each([
    ['/', 'with the field for a sum beside', 6],
    ['/emitted/', 'of what leaves the LEDs', 7],
  ])('every size class has its lowest price of a watt: %s, %s', async (address, _what, atLeast) => {
    await using opened = await site.open(address, { viewport });
    const { page } = opened;
    const bottoms = await page
      .locator('#spend, [data-lowest] tr:not(.unseen tr)')
      .evaluateAll((them) => them.map((it) => it.getBoundingClientRect().bottom));
    expect(bottoms.length).toBeGreaterThanOrEqual(atLeast);
    expect(Math.max(...bottoms)).toBeLessThan(viewport.height);
  });

  test('a sum in the address is answered by size class, without a scroll and in few words', async () => {
    await using opened = await site.open('/?spend=600', { viewport });
    const { page, complaints } = opened;
    const answer = page.locator('[data-spend-answer]');
    await expect.poll(() => answer.locator('tbody').count()).toBeGreaterThan(2);
    expect(await page.evaluate(() => scrollY)).toBe(0);
    const box = await answer.boundingBox();
    expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThan(viewport.height);
    // The page's own list gives its place to the answer.
    expect(await page.locator('[data-lowest]').isVisible()).toBe(false);
    expect(await page.locator('#answers').textContent()).toBe('Most light for €600, by size');
    const before = await page.evaluate(() => {
      const first = document.querySelector('[data-spend-answer] td a');
      const range = document.createRange();
      range.setStart(document.querySelector('main h1') as Element, 0);
      range.setEndBefore(first as Element);
      const shown = range.cloneContents();
      for (const it of shown.querySelectorAll('[data-lowest], .unseen, svg')) it.remove();
      return (shown.textContent ?? '').match(/\S*\p{L}\S*/gu)?.length;
    });
    expect(before).toBeLessThanOrEqual(40);
    expect(complaints).toEqual([]);
  });
});

test('names nothing that the sum does not buy, and in each class nothing weaker than what it does', async () => {
  await using opened = await site.open('/');
  const { page } = opened;
  await page.getByLabel('I can spend').fill('200');
  const answer = page.locator('[data-spend-answer]');
  await expect.poll(() => answer.locator('tbody').count()).toBeGreaterThan(0);
  const classes = await answer.locator('tbody').evaluateAll((them) =>
    them.map((it) => ({
      id: it.querySelector('th a')?.getAttribute('href')?.slice(1),
      slugs: [...it.querySelectorAll('td:nth-of-type(1) a:not(.dagger)')].map(
        (a) => a.getAttribute('href')?.split('/')[2],
      ),
    })),
  );
  const priceOf = (slug: string | undefined) => {
    const it = ranked.find((panel) => panel.slug === slug);
    return it ? priceIn(it) : Number.NaN;
  };
  for (const { slugs } of classes) for (const it of slugs) expect(priceOf(it)).toBeLessThanOrEqual(200);
  const desk = classes.find((it) => it.id === 'desk');
  expect(desk?.slugs).toEqual(['fennimarsh-reed', 'ruddlestone-r60']);
  await expect.poll(() => new URL(page.url()).search).toBe('?spend=200');
  await page.getByRole('button', { name: 'Any sum' }).click();
  await expect.poll(() => page.locator('[data-lowest]').isVisible()).toBe(true);
  await expect.poll(() => new URL(page.url()).search).toBe('');
  expect(await answer.textContent()).toBe('');
});

test('a sum that buys nothing is told the least that there is to pay', async () => {
  await using opened = await site.open('/?spend=1');
  const { page } = opened;
  const answer = page.locator('[data-spend-answer]');
  await expect.poll(() => answer.textContent()).toMatch(/^No panel costs €1 or less\. The cheapest, at €32, is the /);
  const list = page.locator('[data-lowest]');
  expect(await list.isVisible()).toBe(true);
  // The answer comes first.
  const [said, listed] = [await answer.boundingBox(), await list.boundingBox()];
  expect((said?.y ?? 0) + (said?.height ?? 0)).toBeLessThanOrEqual(listed?.y ?? 0);
});

test('own prices change the answer, and say so', async () => {
  await using opened = await site.open('/?spend=300&own.kelpwright-gannet=250');
  const answer = opened.page.locator('[data-spend-answer]');
  await expect.poll(() => answer.textContent()).toContain('Kelpwright Gannet');
  expect(await answer.locator('tr', { hasText: 'Kelpwright Gannet' }).textContent()).toContain('your price');
});

test('a panel in doubt is marked, one that was measured otherwise is named as left out', async () => {
  await using opened = await site.open('/?spend=530');
  const answer = opened.page.locator('[data-spend-answer]');
  await expect.poll(() => answer.textContent()).toContain('Ruddlestone R150');
  expect(await answer.locator('tr', { hasText: 'Ruddlestone R150' }).locator('.dagger').count()).toBe(1);
  expect(await answer.textContent()).toMatch(/Measured otherwise, so left out: Ostrel Vagg/);
});

test('a price in another currency is shown as it was asked to who wants that', async () => {
  await using opened = await site.open('/?spend=185');
  const { page } = opened;
  const row = page.locator('[data-spend-answer] tr', { hasText: 'Fennimarsh Electric Reed' });
  await row.waitFor();
  const [base, asked] = [row.getByText('€182.85'), row.getByText('£159')];
  expect([await base.isVisible(), await asked.isVisible()]).toEqual([true, false]);
  await page.getByLabel('as priced').check();
  expect([await base.isVisible(), await asked.isVisible()]).toEqual([false, true]);
});

test('without a script there is no field, and nothing is empty', async () => {
  await using opened = await site.open('/?spend=600', { javaScriptEnabled: false });
  const { page } = opened;
  expect(await page.locator('#ask').isVisible()).toBe(false);
  expect(await page.locator('[data-lowest]').isVisible()).toBe(true);
});

test('in the narrowest window it begins with the field and the answer', async () => {
  await using opened = await site.open('/?spend=600', { viewport: NARROWEST });
  const answer = opened.page.locator('[data-spend-answer] tbody');
  await answer.first().waitFor();
  const box = await answer.first().boundingBox();
  expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThan(NARROWEST.height);
});

test('who pays is a line that leads to all of it, here and on the ranking by emitted watt', async () => {
  await using opened = await site.open('/emitted/');
  const { page } = opened;
  await page.locator('.line a', { hasText: 'All of it' }).click();
  await page.waitForURL('**/#disclosure');
  const top = () => page.locator('#disclosure').evaluate((it) => it.getBoundingClientRect().top);
  await expect.poll(top).toBeLessThan(DESK.height);
  expect(await top()).toBeGreaterThanOrEqual(0);
  expect(await page.locator('#disclosure + p').textContent()).toContain('One shop code');
});

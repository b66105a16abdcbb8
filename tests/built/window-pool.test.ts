import { afterAll, beforeAll, expect, test } from 'vitest';
import { DESK, type OpenSite, openSite, PHONE } from './browser.ts';

let site: OpenSite;
beforeAll(async () => {
  site = await openSite();
});
afterAll(() => site.close());

/** What a page can tell of how it was opened, and of what was there before it. */
function told() {
  return {
    width: innerWidth,
    dark: matchMedia('(prefers-color-scheme: dark)').matches,
    still: matchMedia('(prefers-reduced-motion: reduce)').matches,
    forced: matchMedia('(forced-colors: active)').matches,
    printed: matchMedia('print').matches,
    kept: [localStorage.length, sessionStorage.length, document.cookie.length],
    hash: location.hash,
    scrolled: scrollY,
  };
}
const AS_NEW = {
  ...{ width: DESK.width, dark: false, still: false, forced: false, printed: false },
  ...{ kept: [0, 0, 0], hash: '', scrolled: 0 },
};

test('a window that has served a test is as a new one for the next', async () => {
  const first = await site.open('/404.html', { viewport: PHONE, colorScheme: 'dark', reducedMotion: 'reduce' });
  const { page } = first;
  await page.emulateMedia({ media: 'print', forcedColors: 'active' });
  await page.route('**/icon.svg', (it) => it.fulfill({ status: 500, body: '' }));
  await page.evaluate(() => {
    localStorage.setItem('a', 'b');
    sessionStorage.setItem('a', 'b');
    location.hash = '#main';
    console.error('left behind');
  });
  await page.context().addCookies([{ name: 'a', value: 'b', url: site.origin }]);
  expect(await page.evaluate(told)).toMatchObject({ printed: true, kept: [1, 1, 3] });
  await first[Symbol.asyncDispose]();

  await using second = await site.open('/404.html');
  expect(second.page).toBe(page);
  expect(await second.page.evaluate(told)).toEqual(AS_NEW);
  expect(await second.page.evaluate(async () => (await fetch('/icon.svg')).status)).toBe(200);
  expect(second.complaints).toEqual([]);
});

test('windows that are open at once are two, and one without scripts is another kind', async () => {
  await using one = await site.open('/404.html');
  await using other = await site.open('/404.html');
  await using plain = await site.open('/404.html', { javaScriptEnabled: false });
  expect(new Set([one.page, other.page, plain.page]).size).toBe(3);
  expect(one.page.context()).not.toBe(other.page.context());
});

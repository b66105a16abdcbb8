/**
 * What readers come for, walked in both browsers: how far it is, in screens, presses and words. The bounds are those that
 * the guide sets itself; what is counted is counted on the page.
 */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { BROWSERS, startWalk, type Walk, type Walker } from './walker.ts';

const PHONE = { width: 390, height: 844 };
const DESK = { width: 1440, height: 900 };
const ZOOMED = { width: 320, height: 256 };
const ZOOMED_PAGES = [
  '/',
  '/emitted/',
  '/panels/kelpwright-cormorant/',
  '/panels/kelpwright-cormorant/methodology/',
  '/compare/?with=kelpwright-gannet,quennick-tope',
  '/plan/?panel=kelpwright-gannet&cm=30&exposure=10',
  '/methods/emitted-power/',
  '/cautions/',
  '/instruments/',
  '/plots/',
];

/** Words on the page from its heading to an element, as a reader comes by them; what is not shown is not read. */
const wordsUntil = (walker: Walker, selector: string) =>
  walker.ask((to) => {
    const end = document.querySelector(to);
    const walk = document.createTreeWalker(document.querySelector('main') as Element, NodeFilter.SHOW_TEXT);
    let words = 0;
    for (let it = walk.nextNode(); it; it = walk.nextNode()) {
      const parent = it.parentElement;
      if (!end || !parent || !(end.compareDocumentPosition(it) & Node.DOCUMENT_POSITION_PRECEDING)) continue;
      if (!parent.checkVisibility({ visibilityProperty: true }) || parent.closest('.unseen, svg, option')) continue;
      words += (it.textContent ?? '').match(/\S*\p{L}\S*/gu)?.length ?? 0;
    }
    return words;
  }, selector);

/** True where an element is in the window, all of it. */
const isInSight = (walker: Walker, selector: string) =>
  walker.ask((it) => {
    const element = document.querySelector(it);
    const box = element?.getBoundingClientRect();
    return element?.checkVisibility() === true && box !== undefined && box.top >= 0 && box.bottom <= innerHeight;
  }, selector);

const textOf = (walker: Walker, selector: string) =>
  walker.ask((it) => document.querySelector(it)?.textContent ?? '', selector);

const isThere = (selector: string) => document.querySelector(selector)?.checkVisibility() === true;

describe.each(BROWSERS)('in %s', (browser) => {
  let walk: Walk;
  beforeAll(async () => {
    walk = await startWalk(browser);
  });
  afterAll(() => walk.close());

  test('600 euros, which panel? One field, no scroll, at most 40 words', async () => {
    await using walker = await walk.open(PHONE);
    await walker.go('/');
    await walker.until(isThere, '#spend');
    expect(await isInSight(walker, '#spend')).toBe(true);
    await walker.type('#spend', '600');
    await walker.until(isThere, '[data-spend-answer] td a');
    expect(await isInSight(walker, '[data-spend-answer]')).toBe(true);
    expect(await wordsUntil(walker, '[data-spend-answer] td a')).toBeLessThanOrEqual(40);
    expect(await textOf(walker, '[data-spend-answer] td a')).toBe('Fennimarsh Electric Sedge');
    expect(walker.complaints).toEqual([]);
  });

  test('is the Gannet better than the Tope? Two presses without a scroll, and a sentence', async () => {
    await using walker = await walk.open(PHONE);
    await walker.go('/');
    const [name, against] = ['[data-lowest] a[href="/panels/kelpwright-gannet/"]', 'main a[href$=",quennick-tope"]'];
    expect(await isInSight(walker, name)).toBe(true);
    await walker.press(name);
    await walker.until(isThere, against);
    expect(await isInSight(walker, against)).toBe(true);
    await walker.press(against);
    await walker.until(() => /Tope.*more/.test(document.querySelector('h1')?.textContent ?? ''));
    expect(await textOf(walker, 'h1')).toMatch(
      /^The Tope gives \d+\sto\s\d+\s%\smore light, and each watt of it costs/,
    );
    expect(await isInSight(walker, 'h1')).toBe(true);
    expect(await wordsUntil(walker, 'h1')).toBeLessThanOrEqual(10);
    expect(walker.complaints).toEqual([]);
  });

  test('how long at 30 cm for 10 J/cm², and what of my eyes? One screen of a phone', async () => {
    await using walker = await walk.open(PHONE);
    await walker.go('/plan/');
    await walker.until(isThere, '#plan-panel');
    await walker.choose('#plan-panel', 'fennimarsh-sedge');
    await walker.type('#plan-distance', '30');
    await walker.type('#plan-exposure', '10');
    await walker.until(() => /\d min/.test(document.querySelector('[data-plan-result]')?.textContent ?? ''));
    const answer = await walker.ask(() => {
      const place = document.querySelector('[data-plan-result]');
      const strip = place?.querySelector('.time-strip')?.getBoundingClientRect();
      return { words: place?.textContent ?? '', strip: strip && strip.top + scrollY + strip.height };
    });
    expect(answer.words).toMatch(/3 min 13 s/);
    expect(answer.words).toContain('Longer than the infrared limit for the eye');
    expect(answer.strip).toBeLessThanOrEqual(PHONE.height);
    expect(walker.complaints).toEqual([]);
  });

  test('a link to one number opens at it, and one press copies it', async () => {
    await using walker = await walk.open(PHONE);
    await walker.go('/panels/kelpwright-gannet/methodology/#optical-power');
    await walker.until((height) => {
      const figure = document.querySelector('#optical-power');
      const top = figure?.getBoundingClientRect().top ?? -1;
      return figure?.closest('details')?.open && top >= 0 && top < height / 2;
    }, PHONE.height);
    await walker.until(isThere, '#optical-power button.copy');
    expect(await walker.ask(() => document.querySelectorAll('#optical-power button.copy').length)).toBeGreaterThan(0);
    expect(walker.complaints).toEqual([]);
  });

  test('what was measured? One press from the panel, and the readings are on the screen', async () => {
    await using walker = await walk.open(DESK);
    await walker.go('/panels/kelpwright-gannet/');
    await walker.until(isThere, 'main a[href$="/kelpwright-gannet/methodology/"]');
    await walker.press('main a[href$="/kelpwright-gannet/methodology/"]');
    await walker.until(isThere, '.grid9');
    expect(await isInSight(walker, '.grid9')).toBe(true);
    expect(walker.complaints).toEqual([]);
  });

  test('by efficiency over all sizes, only those that don’t flicker: the link opens at the table', async () => {
    await using walker = await walk.open(DESK);
    await walker.go('/?sort=all.efficiency.descending&flicker=steady&flicker=faster');
    await walker.until(() => {
      const top = document.querySelector('#all-panels')?.getBoundingClientRect().top ?? -1;
      return top >= -2 && top < innerHeight / 2 && scrollY > 0;
    });
    const found = await walker.ask(() => {
      const head = [...document.querySelectorAll('.ranking thead th')].findIndex((it) => it.matches('[aria-sort]'));
      return [...document.querySelectorAll<HTMLTableRowElement>('.ranking tbody tr')]
        .filter((it) => it.checkVisibility() && it.cells.length > 5)
        .map((it) => Number.parseFloat(it.cells[head]?.textContent ?? ''));
    });
    const known = found.filter((it) => !Number.isNaN(it));
    expect(known.length).toBeGreaterThan(3);
    expect(known).toEqual(known.toSorted((a, b) => b - a));
    expect(walker.complaints).toEqual([]);
  });

  test('by keyboard: the first panel’s name within twelve stops', async () => {
    await using walker = await walk.open(DESK);
    await walker.go('/');
    await walker.until(isThere, '#spend');
    let stops = 0;
    const isAtPanel = () => document.activeElement?.matches('main a[href^="/panels/"]') === true;
    while (stops < 20 && !(await walker.ask(isAtPanel))) {
      await walker.key('Tab');
      stops += 1;
    }
    expect(stops).toBeGreaterThan(2);
    expect(stops).toBeLessThanOrEqual(12);
  });

  // Chromium is asked by the tests of paper, of more pages.
  test.each(browser === 'Firefox' ? ZOOMED_PAGES : [])(
    'at four times the size nothing has to be moved sideways: %s',
    async (address) => {
      await using walker = await walk.open(ZOOMED);
      await walker.go(address);
      await walker.until(() => document.readyState === 'complete');
      expect(await walker.ask(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
      expect(walker.complaints).toEqual([]);
    },
  );
});

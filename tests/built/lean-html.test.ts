import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { leanHtml } from '../../src/build/lean-html.ts';
import { leadsOn, PAGES } from './site.ts';
import { BROWSERS, startWalk, type Walk, type Walker } from './walker.ts';

/** Of panels, drafts and withdrawn ones too, and their calculations. */
const OF_PANELS = PAGES.filter((it) => /^\/panels\/./.test(it.address) && !leadsOn(it));

/** A page as the browser has read it, with every end tag. */
const whole = (walker: Walker, html: string) =>
  walker.ask((text) => new DOMParser().parseFromString(text, 'text/html').documentElement.outerHTML, html);

/** Without spaces between a table's parts and at the end of items, which no browser shows. */
const squeezed = (html: string) =>
  html
    .replaceAll(/\s*(<\/?(?:t[dhr]|thead|tbody|tfoot|table|caption)\b[^>]*>)\s*/g, '$1')
    .replaceAll(/\s*(<\/(?:li|d[dt]|p)>)\s*/g, '$1');

describe.each(BROWSERS)('%s', (name) => {
  let walk: Walk;
  beforeAll(async () => {
    walk = await startWalk(name);
  });
  afterAll(() => walk.close());

  // The browser's own parser is the reference: HTML Standard (WHATWG), 13.2 “Parsing HTML documents”.
  test('reads the same document of a panel’s page with its end tags and without', async () => {
    await using walker = await walk.open({ width: 390, height: 844 });
    await walker.go('/404.html');
    expect(OF_PANELS.length).toBeGreaterThan(20);
    let left = 0;
    for (const { address, html } of OF_PANELS) {
      const full = await whole(walker, html);
      expect(leanHtml(html, address), address).toBe(html);
      const lean = leanHtml(full, address);
      left += full.length - lean.length;
      expect(squeezed(await whole(walker, lean)), address).toBe(squeezed(full));
    }
    expect(left / OF_PANELS.length).toBeGreaterThan(1000);
  });
});

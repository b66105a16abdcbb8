import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { DEMO_SITE } from '../support/demo-folder.ts';
import { bringChecker, COLOURS, EVERYTHING, excess, faultsInAllLooks, violations } from './accessibility-checker.ts';
import { DESK, NARROWEST, type OpenSite, openSite, PHONE } from './browser.ts';
import { FILES, PAGES, panelFiles, panelsJson, type SitePage, textOf } from './site.ts';

const panels = panelsJson().panels.filter((it) => it.sessions.length > 0);
const slugOf = (what: string, it: { slug: string } | undefined) => {
  if (!it) throw new Error(`the content has no panel ${what}`);
  return it.slug;
};
const flagged = slugOf(
  'with flags',
  panels.find((it) => (it.sessions[0]?.flags.length ?? 0) > 0),
);
const plain = slugOf(
  'without flags',
  panels.find((it) => it.sessions[0]?.flags.length === 0),
);
const gaps = (it: (typeof panels)[number]) =>
  Object.values(it.sessions[0]?.figures ?? {}).filter((f) => f.value === null);
const sparse = slugOf('with gaps', panels.toSorted((a, b) => gaps(b).length - gaps(a).length)[0]);
const retested = slugOf(
  'tested twice',
  panels.find((it) => it.sessions.length > 1),
);
const undrawn = PAGES.find(
  (it) => /^\/panels\/[^/]+\/$/.test(it.address) && it.document.querySelectorAll('svg.field').length === 0,
);

/** A page of each kind. */
const KINDS: Array<[kind: string, address: string]> = [
  ['the guide', '/'],
  ['a panel', `/panels/${plain}/`],
  ['a panel with flags', `/panels/${flagged}/`],
  ['a panel with many gaps', `/panels/${sparse}/`],
  ...(undrawn ? [['a panel without a drawn grid', undrawn.address] as [string, string]] : []),
  ['a withdrawn panel', `/panels/${slugOf('withdrawn', panelFiles('withdrawn')[0])}/`],
  ['the working of a panel tested twice', `/panels/${retested}/methodology/`],
  ['what was at an address that is given up', '/panels/ruddlestone-r30/'],
  ['a panel with photos', '/panels/kelpwright-gannet/'],
  ['all panels', '/panels/'],
  ['all methods', '/methods/'],
  ['a method, at a version that is no longer used', '/methods/optical-power/#version-1'],
  ['the changes', '/changes/'],
  ['the ranking by a watt in the frame, on a page of its own', '/frame/'],
  ['the guide sorted over all sizes', '/?sort=all.efficiency.descending&flicker=faster'],
  ['the plots', '/plots/'],
  ['the planner', '/plan/'],
  ['a planned session', '/plan/?panel=kelpwright-cormorant&exposure=12&cm=25'],
  ['the guide with its tools in use', '/?class=palm&price-to=900&spend=300&extra=10&own.kelpwright-limpet=20&foo=1'],
  ['the comparison, with nothing chosen', '/compare/'],
  ['the cautions', '/cautions/'],
  ['the data', '/data/'],
  ['the agreement with another tester', '/agreement/'],
  ['the page of cards', '/cards/'],
  ['a figure’s small card', '/cards/quennick-dab/mean-irradiance.html'],
  ['the instruments', '/instruments/'],
  ['the run sheet', '/bench/sheet/?panel=kelpwright-gannet'],
  ['the search, with results', '/search/?q=irradiance'],
];

let site: OpenSite;
beforeAll(async () => {
  site = await openSite();
});
afterAll(() => site.close());

/** Opens a page of some kind, with all that it comes to show. */
async function openKind(address: string) {
  const opened = await site.open(address);
  if (address.includes('exposure=')) await opened.page.locator('[data-plan-result] .person').waitFor();
  if (address.includes('own.')) {
    // Filters and prices that an address asks for are in use while they are folded; here they are open.
    for (const part of ['own', 'filter']) {
      const button = opened.page.locator(`[data-part=${part}]`);
      await button.filter({ hasText: 'in use' }).click();
      await opened.page.locator(`#${part}-part`).waitFor();
    }
    await opened.page.locator('[data-own-list] li').first().waitFor();
  }
  if (address.startsWith('/search/')) await opened.page.locator('#found li').first().waitFor();
  return opened;
}

describe('a page of each kind, in light and dark, on a desk and on a phone', () => {
  // A window of 320 pixels is one of 1280 at 400 %.
  test.concurrent.for(KINDS)(
    '%s has no fault that the checker knows, and never scrolls sideways as a whole',
    async ([, address], { expect: here }) => {
      await using opened = await openKind(address);
      for (const viewport of [DESK, PHONE, NARROWEST]) {
        await opened.page.setViewportSize(viewport);
        // Plots are drawn anew for the new width, a moment later.
        await here.poll(() => excess(opened.page), { message: `${viewport.width}` }).toBe(0);
      }
      here(await faultsInAllLooks(opened.page)).toEqual([]);
      here(opened.complaints).toEqual([]);
    },
  );
});

/** Rules for some width of the window that set a colour; the checker judges colours at one width alone. */
function coloursByWidth(css: string): string[] {
  const blocks = [...css.matchAll(/@media[^{]*(?:width|height|orientation)[^{]*\{((?:[^{}]*\{[^{}]*\})*)\s*\}/g)];
  return blocks.flatMap((it) =>
    /[{;]\s*(?:[a-z-]*color|background|fill|stroke|opacity|border)\b[^-:]*:/.test(it[1] ?? '') ? [it[0]] : [],
  );
}

test('no colour hangs on the width of the window', () => {
  const sheets = FILES.filter((it) => it.endsWith('.css')).map((it) => readFileSync(join(DEMO_SITE, it), 'utf8'));
  const wide = sheets.flatMap((it) => [...it.matchAll(/@media[^{]*width/g)]);
  expect(wide.length).toBeGreaterThan(0);
  expect(sheets.flatMap(coloursByWidth)).toEqual([]);
  expect(coloursByWidth('@media (width<=40rem){.a{margin:0}.b{color:red}}')).toHaveLength(1);
});

describe('faults are found where they are:', () => {
  test('by the checker', async () => {
    await using opened = await site.open('/404.html');
    const { page } = opened;
    await bringChecker(page);
    await page.locator('main').evaluate((it) => it.insertAdjacentHTML('beforeend', '<img src="/icon.svg">'));
    expect(await violations(page, EVERYTHING)).toEqual([expect.stringMatching(/^image-alt: /)]);
  });

  test('a colour too pale', async () => {
    await using opened = await site.open('/404.html', { colorScheme: 'dark' });
    const { page } = opened;
    await bringChecker(page);
    await page.locator('main p').evaluate((it) => it.style.setProperty('color', '#444'));
    expect(await violations(page, COLOURS)).toEqual([expect.stringMatching(/^color-contrast: /)]);
  });

  test('a page too wide', async () => {
    await using opened = await site.open('/404.html');
    await opened.page.locator('main p').evaluate((it) => it.style.setProperty('min-width', '3000px'));
    expect(await excess(opened.page)).toBeGreaterThan(1000);
  });

  test('a request that leaves the site, and the policy that stops it', async () => {
    await using opened = await site.open('/404.html');
    const { page, complaints } = opened;
    await page.evaluate(() => fetch('https://elsewhere.invalid/').catch(() => undefined));
    await page.evaluate(() => {
      const script = document.createElement('script');
      script.textContent = 'document.title = "inline";';
      document.body.append(script);
    });
    expect(await page.title()).not.toBe('inline');
    expect(complaints.filter((it) => it.includes('policy: connect-src https://elsewhere.invalid'))).toHaveLength(1);
    expect(complaints.filter((it) => it.includes('policy: script-src-elem inline'))).toHaveLength(1);
  });
});

/**
 * Small cards are one page in all but their words: of all that show the same figure, the one with the most words stands
 * for the others.
 */
function withoutLikes(pages: readonly SitePage[]): SitePage[] {
  const kept = new Map<string, SitePage>();
  for (const page of pages) {
    const kind = /^\/cards\/[^/]+(\/[^/]+\.html)$/.exec(page.address)?.[1] ?? page.address;
    const before = kept.get(kind);
    if (!before || textOf(before.document).length < textOf(page.document).length) kept.set(kind, page);
  }
  return [...kept.values()];
}

describe('every other page', () => {
  test('loads without a complaint, asks nothing of another host and fits the narrowest window', async () => {
    const faults: string[] = [];
    await using opened = await site.open('/404.html', { viewport: NARROWEST });
    const { page, complaints } = opened;
    // A page of each kind has been asked the same above.
    const asked = new Set(KINDS.map(([, address]) => address));
    for (const { address } of withoutLikes(PAGES).filter((it) => !asked.has(it.address))) {
      await page.goto(site.origin + address);
      const wide = await excess(page);
      if (wide > 0) faults.push(`${address} is ${wide} pixels too wide`);
      faults.push(...complaints.splice(0).map((it) => `${address} ${it}`));
    }
    expect(faults).toEqual([]);
  });

  test('that is not there answers with the page that says so', async () => {
    await using opened = await site.open('/panels/no-such-panel/');
    expect(await opened.page.title()).toMatch(/^No such page/);
    expect(opened.complaints.every((it) => it.includes('404'))).toBe(true);
  });
});

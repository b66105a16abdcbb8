import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { listedPart, PAGE_PARTS, PANEL_PARTS, partsOf, RANKING_PARTS } from '../../src/content/rules/page-parts.ts';
import type { RawCollections } from '../../src/content/rules/rule.ts';
import { hasAll, readAddressList } from '../../src/site/addresses/address-list.ts';
import { guideAddresses } from '../../src/site/addresses/guide-addresses.ts';
import { siteAddress } from '../../src/site/shared/site-address.ts';
import { DEMO_FOLDER, DEMO_SITE } from '../support/demo-folder.ts';
import { demoLedger } from '../support/demo-ledger.ts';
import { FILES, PAGES, pageAt } from './site.ts';

const { ledger, content } = demoLedger();
const live = guideAddresses(ledger);

test('every page and every data file that a build writes is among the addresses that are kept', () => {
  const pages = PAGES.map((it) => it.address).filter((it) => it.endsWith('/'));
  expect(pages.length).toBeGreaterThan(80);
  expect(pages.filter((it) => !live.has(it))).toEqual([]);
  // The bench pad's own change with it.
  const data = FILES.filter((it) => /^\/data\/(?!bench\/)/.test(it) && !it.endsWith('.html'));
  expect(data.filter((it) => !live.has(it))).toEqual([]);
});

test('every page that search engines may list is in the sitemap, by the address that it is known by', () => {
  const listed = [...readFileSync(join(DEMO_SITE, 'sitemap.xml'), 'utf8').matchAll(/<loc>(.*?)<\/loc>/g)];
  const canonical = PAGES.filter(({ html }) => !html.includes('<meta name="robots" content="noindex">')).flatMap(
    ({ html }) => /<link rel="canonical" href="([^"]+)"/.exec(html)?.[1] ?? [],
  );
  // A tool of the tester, and a page without content of its own.
  const unlisted = ['/bench/sheet/', '/search/'].map((it) => siteAddress(it, ledger.guide.site));
  expect(listed.map((it) => it[1]).toSorted()).toEqual(
    [...new Set(canonical)].filter((it) => !unlisted.includes(it)).toSorted(),
  );
});

test('every address that is kept is there, with each of its parts', () => {
  let parts = 0;
  for (const [address, { parts: own, sessions }] of live) {
    const path = join(DEMO_SITE, address.endsWith('/') ? `${address}index.html` : address);
    expect(existsSync(path), address).toBe(true);
    if (own.size === 0 && sessions.size === 0) continue;
    const ids = new Set([...pageAt(address).html.matchAll(/ id="([^"]+)"/g)].map((it) => it[1]));
    const wanted = [...own, ...[...sessions].flatMap(([day, metrics]) => [...metrics].map((it) => `${it}-${day}`))];
    expect(
      wanted.filter((it) => !ids.has(it)),
      address,
    ).toEqual([]);
    parts += wanted.length;
  }
  expect(parts).toBeGreaterThan(1000);
});

test('a link to any part of a page is known to the check of links, and parts that it knows are there', () => {
  const { guide, panels, makers } = content;
  const raw = Object.fromEntries(
    Object.entries({ guide: new Map([['guide', guide]]), panels, makers }).map(([name, them]) => [
      name,
      new Map([...them].map(([id, { source }]) => [id, source])),
    ]),
  ) as unknown as RawCollections;
  const found = new Set<string>();
  let pages = 0;
  for (const { address, document, html } of PAGES) {
    const known = partsOf(address, raw);
    if (!known || !live.has(address)) continue;
    pages++;
    const ids = [...html.matchAll(/ id="([^"]+)"/g)].map((it) => it[1] ?? '');
    // A link leads to headings and sections, seldom to the fields of a tool.
    const unknown = ids.filter(
      (it) =>
        !known.includes(listedPart(it)) &&
        document.querySelector(`h2[id="${it}"], section[id="${it}"], tbody[id="${it}"], th[id="${it}"]`),
    );
    expect(unknown, address).toEqual([]);
    for (const it of ids) found.add(`${address.startsWith('/panels/') ? '' : address}#${it}`);
  }
  expect(pages).toBeGreaterThan(25);
  const listed = [
    ...PANEL_PARTS.map((it) => `#${it}`),
    ...Object.entries({ ...PAGE_PARTS, ...RANKING_PARTS }).flatMap(([page, ids]) => ids.map((it) => `${page}#${it}`)),
  ];
  expect(listed.filter((it) => !found.has(it))).toEqual([]);
});

test('the demonstration keeps a list, and what it has given up says so where it was', () => {
  const { list, problems } = readAddressList(readFileSync(join(DEMO_FOLDER, 'addresses.txt'), 'utf8'), '');
  expect(problems).toEqual([]);
  expect(hasAll(live, list)).toBe(true);
  for (const address of ['/panels/ruddlestone-r30/', '/panels/ruddlestone-r30/methodology/']) {
    const { document, html } = pageAt(address);
    expect(document.querySelector('h1')?.textContent).toBe('Withdrawn');
    expect(document.querySelector('main')?.textContent).toContain('30 Oct 2026');
    expect(html).toContain('<a href="/panels/ruddlestone-r60/">Ruddlestone R60</a>');
    expect(html).toContain('<meta name="robots" content="noindex">');
  }
});

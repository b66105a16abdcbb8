import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { beforeAll, expect, test } from 'vitest';
import type { Ledger } from '../../../src/ledger/ledger.ts';
import { robotsTxt, sitemapXml } from '../../../src/site/export/sitemap.ts';
import { demoLedger } from '../../support/demo-ledger.ts';

let ledger: Ledger;
let urls: Array<{ loc: string; lastmod?: string }>;
beforeAll(() => {
  ledger = demoLedger().ledger;
  urls = new XMLParser({ parseTagValue: false }).parse(sitemapXml(ledger)).urlset.url;
});

test('is XML, and every page is in it once, by its full address', () => {
  expect(XMLValidator.validate(sitemapXml(ledger))).toBe(true);
  const paths = urls.map((it) => new URL(it.loc).pathname);
  expect(new Set(paths).size).toBe(paths.length);
  expect(paths).toEqual(
    expect.arrayContaining(['/', '/methods/optical-power/', '/panels/kelpwright-gannet/methodology/']),
  );
  expect(paths).not.toContain('/search/');
  // One of the two rankings has the guide's own page.
  expect(paths).not.toContain('/frame/');
  for (const { loc } of urls) expect(loc.startsWith(ledger.guide.site)).toBe(true);
});

test('a panel has the day of its newest session or price, drafts are not there', () => {
  const gannet = ledger.panels.get('kelpwright-gannet');
  const days = [gannet?.current?.date, gannet?.prices[0]?.price.date].filter((it) => it !== undefined);
  expect(urls.find((it) => it.loc.endsWith('/panels/kelpwright-gannet/'))?.lastmod).toBe(days.toSorted().at(-1));
  const drafts = [...ledger.panels.values()].filter((it) => it.data.status === 'draft').map((it) => it.slug);
  expect(urls.filter((it) => drafts.some((slug) => it.loc.includes(`/${slug}/`)))).toEqual([]);
});

test('robots are told where it is', () => {
  expect(robotsTxt(ledger)).toMatch(/^User-agent: \*\nAllow: \/\n\nSitemap: https:\/\/\S+\/sitemap\.xml\n$/);
});

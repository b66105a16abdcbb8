import { XMLParser } from 'fast-xml-parser';
import { beforeAll, expect, test } from 'vitest';
import type { Ledger } from '../../../src/ledger/ledger.ts';
import { robotsTxt, sitemapXml } from '../../../src/site/export/sitemap.ts';
import { demoLedger } from '../../support/demo-ledger.ts';
import { SITEMAP_SCHEMA, schemaFaults } from '../../support/xml-schema.ts';

let ledger: Ledger;
let urls: Array<{ loc: string; lastmod?: string }>;
beforeAll(() => {
  ledger = demoLedger().ledger;
  urls = new XMLParser({ parseTagValue: false }).parse(sitemapXml(ledger)).urlset.url;
});

test('fits the schema of sitemaps.org, which refuses what does not', () => {
  const xml = sitemapXml(ledger);
  expect(schemaFaults(SITEMAP_SCHEMA, xml)).toEqual([]);
  const faulty = [
    xml.replace(/<loc>[^<]*<\/loc>/, ''),
    xml.replace(/<lastmod>[^<]*/, '<lastmod>25 November'),
    xml.replace(/<loc>[^<]*/, '<loc>/'),
    xml.replace('<url>', '<url><day>2026-11-25</day>'),
  ];
  for (const it of faulty) expect(schemaFaults(SITEMAP_SCHEMA, it)).not.toEqual([]);
});

test('every page is in it once, by its full address', () => {
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

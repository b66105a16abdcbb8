import type { Loaded } from '../../ledger/load-ledger.ts';
import { withdrawnFiles } from '../addresses/withdrawn.ts';
import { type BenchReader, benchPanelFile, benchSetup } from '../bench/bench-setup.ts';
import { badgeFiles } from '../cards/badge-files.ts';
import { comparedPanel, panelList } from '../compare/compare-data.ts';
import { offersJson } from '../guide/offers-data.ts';
import {
  MOVED_SCRIPT,
  MOVED_SCRIPT_TEXT,
  movedFiles,
  movedHtml,
  movedPages,
  redirectsText,
} from '../moved/moved-pages.ts';
import { changesFeed } from '../news/changes-feed.ts';
import { planJson } from '../plan/plan-data.ts';
import { headersFile } from '../serving/headers-file.ts';
import { panelsCsv } from './panels-csv.ts';
import { panelsJson } from './panels-json.ts';
import { panelsSchema } from './panels-schema.ts';
import { json, type PublishedFile } from './published-file.ts';
import { robotsTxt, sitemapXml } from './sitemap.ts';
import { standardsCsv } from './standards-data.ts';
import { packageFiles } from './tables/package-files.ts';

/** Every file under `/data/`, and what stands at old addresses; each worked out when it is asked for. */
export function publishedFiles(loaded: Loaded, reader: BenchReader): PublishedFile[] {
  const { ledger } = loaded;
  const moved = movedPages(ledger);
  return [
    { ...json('data/panels.json', () => panelsJson(ledger)), isOfPanels: true },
    { path: 'data/panels.csv', type: 'text/csv', text: () => panelsCsv(ledger), isOfPanels: true },
    { path: 'data/standards.csv', type: 'text/csv', text: () => standardsCsv(ledger) },
    json('data/panels.schema.json', () => [JSON.stringify(panelsSchema(ledger.guide.site), undefined, 1)]),
    ...packageFiles(ledger),
    json('data/offers.json', () => [offersJson(ledger)]),
    json('data/plan.json', () => [planJson(ledger)]),
    json('data/compare.json', () => [JSON.stringify(panelList(ledger))]),
    ...[...ledger.panels.values()].map((panel) =>
      json(`data/compare/${panel.slug}.json`, () => [JSON.stringify(comparedPanel(panel, ledger))]),
    ),
    ...movedFiles(ledger).map(({ from, panel }) =>
      json(from.slice(1), () => [JSON.stringify(comparedPanel(panel, ledger))]),
    ),
    ...withdrawnFiles(ledger).map(
      ({ path, isJson, text }): PublishedFile => ({
        path,
        type: isJson ? 'application/json' : 'text/plain',
        text: () => [text],
      }),
    ),
    ...badgeFiles(ledger),
    { path: 'changes.xml', type: 'application/atom+xml', text: () => [changesFeed(ledger)] },
    { path: 'sitemap.xml', type: 'application/xml', text: () => [sitemapXml(ledger)] },
    { path: 'robots.txt', type: 'text/plain', text: () => [robotsTxt(ledger)] },
    json('data/bench.json', () => [JSON.stringify(benchSetup(loaded, reader))]),
    ...[...ledger.panels.keys()].map((slug) =>
      json(`data/bench/${slug}.json`, () => [JSON.stringify(benchPanelFile(loaded, slug, reader))]),
    ),
    { path: '_headers', type: 'text/plain', text: () => [headersFile(ledger.guide.site)] },
    ...moved.map(
      (page): PublishedFile => ({
        path: `${page.from.slice(1)}index.html`,
        type: 'text/html',
        text: () => [movedHtml(page, ledger.guide)],
      }),
    ),
    ...(moved.length > 0
      ? [
          { path: MOVED_SCRIPT.slice(1), type: 'text/javascript', text: () => [MOVED_SCRIPT_TEXT] } as const,
          { path: '_redirects', type: 'text/plain', text: () => [redirectsText(ledger)] } as const,
        ]
      : []),
  ];
}

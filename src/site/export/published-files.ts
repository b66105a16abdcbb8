import type { Ledger } from '../../ledger/ledger.ts';
import { comparedPanel, panelList } from '../compare/compare-data.ts';
import { offersJson } from '../guide/offers-data.ts';
import { MOVED_SCRIPT, MOVED_SCRIPT_TEXT, movedHtml, movedPages } from '../moved/moved-pages.ts';
import { changesFeed } from '../news/changes-feed.ts';
import { planJson } from '../plan/plan-data.ts';
import { panelsCsv } from './panels-csv.ts';
import { panelsJson } from './panels-json.ts';
import { panelsSchema } from './panels-schema.ts';
import { robotsTxt, sitemapXml } from './sitemap.ts';
import { standardsCsv } from './standards-data.ts';
import { dataPackage } from './tables/data-package.ts';
import { TABLES, tablePath } from './tables/index.ts';
import { tableCsv } from './tables/table.ts';

/** A file that a build writes itself. */
export interface PublishedFile {
  /** Its address without the leading slash. */
  path: string;
  type:
    | 'application/atom+xml'
    | 'application/json'
    | 'application/xml'
    | 'text/csv'
    | 'text/html'
    | 'text/javascript'
    | 'text/plain';
  /** Its text, in pieces that are written one after another. */
  text(): Iterable<string>;
}

const json = (path: string, text: () => Iterable<string>): PublishedFile => ({ path, type: 'application/json', text });

/** Every file under `/data/`, and what stands at old addresses; each worked out when it is asked for. */
export function publishedFiles(ledger: Ledger): PublishedFile[] {
  const moved = movedPages(ledger);
  return [
    json('data/panels.json', () => panelsJson(ledger)),
    { path: 'data/panels.csv', type: 'text/csv', text: () => panelsCsv(ledger) },
    { path: 'data/standards.csv', type: 'text/csv', text: () => standardsCsv(ledger) },
    json('data/datapackage.json', () => [JSON.stringify(dataPackage(ledger), undefined, 1)]),
    json('data/panels.schema.json', () => [JSON.stringify(panelsSchema(ledger.guide.site), undefined, 1)]),
    ...TABLES.map(
      (table): PublishedFile => ({
        path: `data/${tablePath(table)}`,
        type: 'text/csv',
        text: () => tableCsv(table, ledger),
      }),
    ),
    json('data/offers.json', () => [offersJson(ledger)]),
    json('data/plan.json', () => [planJson(ledger)]),
    json('data/compare.json', () => [JSON.stringify(panelList(ledger))]),
    ...[...ledger.panels.values()].map((panel) =>
      json(`data/compare/${panel.slug}.json`, () => [JSON.stringify(comparedPanel(panel, ledger))]),
    ),
    { path: 'changes.xml', type: 'application/atom+xml', text: () => [changesFeed(ledger)] },
    { path: 'sitemap.xml', type: 'application/xml', text: () => [sitemapXml(ledger)] },
    { path: 'robots.txt', type: 'text/plain', text: () => [robotsTxt(ledger)] },
    ...moved.map(
      (page): PublishedFile => ({
        path: `${page.from.slice(1)}index.html`,
        type: 'text/html',
        text: () => [movedHtml(page, ledger.guide)],
      }),
    ),
    ...(moved.length > 0
      ? [{ path: MOVED_SCRIPT.slice(1), type: 'text/javascript', text: () => [MOVED_SCRIPT_TEXT] } as const]
      : []),
  ];
}

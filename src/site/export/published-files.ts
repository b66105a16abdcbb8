import type { Loaded } from '../../ledger/load-ledger.ts';
import { type BenchReader, benchPanelFile, benchSetup } from '../bench/bench-setup.ts';
import { comparedPanel, panelList } from '../compare/compare-data.ts';
import { offersJson } from '../guide/offers-data.ts';
import { MOVED_SCRIPT, MOVED_SCRIPT_TEXT, movedHtml, movedPages } from '../moved/moved-pages.ts';
import { planJson } from '../plan/plan-data.ts';
import { panelsCsv } from './panels-csv.ts';
import { panelsJson } from './panels-json.ts';
import { standardsCsv } from './standards-data.ts';

/** A file that a build writes itself. */
export interface PublishedFile {
  /** Its address without the leading slash. */
  path: string;
  type: 'application/json' | 'text/csv' | 'text/html' | 'text/javascript';
  /** Its text, in pieces that are written one after another. */
  text(): Iterable<string>;
}

const json = (path: string, text: () => Iterable<string>): PublishedFile => ({ path, type: 'application/json', text });

/** Every file under `/data/`, and what stands at old addresses; each worked out when it is asked for. */
export function publishedFiles(loaded: Loaded, reader: BenchReader): PublishedFile[] {
  const { ledger } = loaded;
  const moved = movedPages(ledger);
  return [
    json('data/panels.json', () => panelsJson(ledger)),
    { path: 'data/panels.csv', type: 'text/csv', text: () => panelsCsv(ledger) },
    { path: 'data/standards.csv', type: 'text/csv', text: () => standardsCsv(ledger) },
    json('data/offers.json', () => [offersJson(ledger)]),
    json('data/plan.json', () => [planJson(ledger)]),
    json('data/compare.json', () => [JSON.stringify(panelList(ledger))]),
    ...[...ledger.panels.values()].map((panel) =>
      json(`data/compare/${panel.slug}.json`, () => [JSON.stringify(comparedPanel(panel, ledger))]),
    ),
    json('data/bench.json', () => [JSON.stringify(benchSetup(loaded, reader))]),
    ...[...ledger.panels.keys()].map((slug) =>
      json(`data/bench/${slug}.json`, () => [JSON.stringify(benchPanelFile(loaded, slug, reader))]),
    ),
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

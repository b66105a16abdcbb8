/** The built site as its tests read it: pages as trees, the content it was made from, and its data files. */
import { globSync, readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { Config, type DOMNode, type HtmlElement, Parser } from 'html-validate';
import { parse as parseYaml } from 'yaml';
import { DEMO_FOLDER, DEMO_SITE } from '../support/demo-folder.ts';
import { expandPanels } from '../support/expand-panels.ts';

/** One HTML file. */
export interface SitePage {
  /** `/panels/some-panel/`; the page for what is not there has its file name, `/404.html`. */
  address: string;
  html: string;
  document: HtmlElement;
}

/** Paths of the site's files, from the site's top: `/data/panels.csv`. */
export const FILES: readonly string[] = readdirSync(DEMO_SITE, { recursive: true, withFileTypes: true })
  .filter((it) => it.isFile())
  .map((it) => `/${relative(DEMO_SITE, join(it.parentPath, it.name)).split(sep).join('/')}`)
  .toSorted();

const parserConfig = await Config.empty().resolve();

/** Every page of the site. */
export const PAGES: readonly SitePage[] = FILES.filter((it) => it.endsWith('.html')).map((file) => {
  const html = readFileSync(join(DEMO_SITE, file), 'utf8');
  return { address: file.replace(/index\.html$/, ''), html, document: new Parser(parserConfig).parseHtml(html) };
});

/** True for a page at an old address, which leads on by itself. */
export const leadsOn = ({ document }: SitePage): boolean =>
  document.querySelector('meta[http-equiv="refresh"]') !== null;

/** The page at an address. */
export function pageAt(address: string): SitePage {
  const page = PAGES.find((it) => it.address === address);
  if (!page) throw new Error(`the site has no page ${address}`);
  return page;
}

const CHARACTERS: Record<string, string> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" };

/** Text without character references. */
export function decoded(text: string): string {
  return text.replace(/&([^;\s]+);/g, (whole, name: string) => {
    const character = CHARACTERS[name];
    if (character === undefined) throw new Error(`${whole} is not among the references that these tests know`);
    return character;
  });
}

/**
 * What an element says, with single spaces. Remarks in <small> are set apart from what they stand behind, as the
 * style sheet sets them.
 */
export function textOf(element: HtmlElement | null): string {
  return decoded(element ? spoken(element) : '')
    .replace(/\s+/g, ' ')
    .trim();
}

function spoken(node: DOMNode): string {
  // The other one of two units, which a script shows instead.
  if (
    'hasAttribute' in node &&
    (node as HtmlElement).hasAttribute('hidden') &&
    (node as HtmlElement).hasAttribute('data-u')
  ) {
    return '';
  }
  const text = node.childNodes.length === 0 ? node.textContent : node.childNodes.map(spoken).join('');
  return node.nodeName === 'small' ? ` ${text}` : text;
}

/** An attribute's value; empty where it has none. */
export function attribute(element: HtmlElement | null, name: string): string {
  return decoded(element?.getAttributeValue(name) ?? '');
}

/** Where an element stands, for a message. */
export function place(page: SitePage, element: HtmlElement): string {
  return `${page.address} line ${element.location.line}, column ${element.location.column}`;
}

/** A panel's file: its slug and what stands above its notes. */
export interface PanelFile {
  slug: string;
  data: {
    maker: string;
    model: string;
    status: 'published' | 'draft' | 'withdrawn';
    formerly?: string[];
    statusReason?: string;
    sessions?: Array<{ date: string }>;
    prices?: Array<{ link?: string; paidLink?: boolean }>;
  };
}

/** The panels of the content, read without any code of the site. */
export const PANEL_FILES: readonly PanelFile[] = globSync('panels/*/index.{md,mdx}', { cwd: DEMO_FOLDER })
  .toSorted()
  .map((file) => {
    const frontMatter = readFileSync(join(DEMO_FOLDER, file), 'utf8').split(/^---$/m)[1] ?? '';
    return { slug: file.split(/[\\/]/)[1] as string, data: parseYaml(frontMatter) };
  });

/** Panels of one status. */
export function panelFiles(status: PanelFile['data']['status']): PanelFile[] {
  return PANEL_FILES.filter((it) => it.data.status === status);
}

/** A figure in the data files, or the reason why there is none. */
export type DataFigure =
  | { value: null; reason: string }
  | {
      id: string;
      value: number;
      unit: string;
      bound?: 'below' | 'above';
      standard_uncertainty: number | null;
      interval95: [number, number] | null;
      uncertainty_absent?: string;
      basis: string;
      method: string;
      method_version: number;
    };

/** What `data/panels.json` holds, as far as the tests look. */
export interface DataFile {
  format: number;
  built_for: string;
  currency: string;
  panels: Array<{
    slug: string;
    address: string;
    maker: string;
    model: string;
    size_class: string | null;
    rank: { place: number; of: number; range: [number, number] | null; tiedWith: string[] } | null;
    rank_absent: string | null;
    rank_by_emitted: { place: number } | null;
    rank_by_emitted_absent: string | null;
    figures?: Record<string, DataFigure>;
    sessions: Array<{
      date: string;
      distance_cm: number;
      figures: Record<string, DataFigure>;
      readings: Array<{ path: string; written: string; value?: number; unit?: string; struck?: string }>;
      flags: Array<{ check: string; severity: string; text: string; concerns: string[] }>;
    }>;
  }>;
}

/** What `data/panels.json` says, in full. */
export function panelsJson(): DataFile {
  return expandPanels(JSON.parse(readFileSync(join(DEMO_SITE, 'data/panels.json'), 'utf8')));
}

/** Value of a figure of a panel's newest session. */
export function currentValue(data: DataFile, slug: string, metric: string): number {
  const it = data.panels.find((panel) => panel.slug === slug)?.sessions[0]?.figures[metric];
  if (!it || it.value === null) throw new Error(`${slug}: no ${metric}`);
  return it.value;
}

/** Figures of a panel's newest session, or of the panel that had none. */
export function currentFigures(panel: DataFile['panels'][number]): Record<string, DataFigure> {
  return panel.sessions[0]?.figures ?? panel.figures ?? {};
}

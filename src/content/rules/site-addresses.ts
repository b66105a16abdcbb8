import { existsSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { METHODS } from '../../measure/methods.ts';
import { idsIn } from '../read/body-links.ts';
import { fields, texts } from '../read/fields.ts';
import { namedFiles } from '../read/files/named-files.ts';
import { productFolder } from '../read/product-folder.ts';
import type { Source } from '../read/source.ts';
import { entryId } from '../schema/collections.ts';
import { partsOf } from './page-parts.ts';
import type { RawCollections } from './rule.ts';

/** Pages that every guide has. */
export const FIXED_PAGES = [
  '/',
  '/bench/',
  '/bench/sheet/',
  '/cautions/',
  '/changes/',
  '/compare/',
  '/data/',
  '/emitted/',
  '/frame/',
  '/instruments/',
  '/methods/',
  '/panels/',
  '/plan/',
  '/plots/',
  '/search/',
] as const;

/** Below `/data/`. */
const DATA_FILES = [
  'panels.json',
  'panels.schema.json',
  'panels.csv',
  'standards.csv',
  'datapackage.json',
  ...['panels', 'sessions', 'metrics', 'figures', 'readings', 'prices', 'carried', 'meters', 'corrections'].map(
    (it) => `tables/${it}.csv`,
  ),
  'offers.json',
  'compare.json',
  'bench.json',
  'plan.json',
];

/** Files that every guide has. */
export const FIXED_FILES = ['/changes.xml', '/robots.txt', '/sitemap.xml', ...DATA_FILES.map((it) => `/data/${it}`)];

/** Ids that the page of a method has besides its prose; those of its versions are counted. */
export const METHOD_IDS = [
  'main',
  'formula',
  'good-for',
  'hides',
  'sources',
  'constants',
  'history',
  'figures',
] as const;
/** Ids that the page of cautions has besides its prose. */
export const CAUTION_IDS = ['main', 'sources'] as const;

/** Id of a check standard's chart on the page of instruments; an instrument may have its name. */
export const standardAnchor = (id: string) => `standard-${id}`;

/** What can be linked to within the guide. */
export interface SiteAddresses {
  /** Addresses of pages and data files. */
  pages: ReadonlySet<string>;
  /** Those that drafts would have, and have not in this guide. */
  drafts: ReadonlySet<string>;
  /** Addresses of before, each with the one of today. */
  moved: ReadonlyMap<string, string>;
  isFile(path: string): boolean;
  /** Ids of a page's parts, where the content tells them all. */
  idsOf(page: string): readonly string[] | undefined;
}

/** True for a panel that is not in the guide yet. */
export function isDraft(source: Source): boolean {
  return texts(source, 'status').some(({ value }) => value === 'draft');
}

/** The address of the page that a content file's body stands on. */
export function pageOf(collection: 'panels' | 'methods' | 'cautions', source: Source): string {
  return collection === 'cautions' ? '/cautions/' : `/${collection}/${entryId(source.file)}/`;
}

/**
 * The guide's addresses, from content as it was read.
 *
 * @param unread files that can't be read; the pages they would make count as there, since they are being written
 * @param withDrafts drafts have pages too, as on the development server
 */
export function siteAddresses(
  content: RawCollections,
  unread: ReadonlySet<string>,
  withDrafts: boolean,
): SiteAddresses {
  const pages = new Set<string>([...FIXED_PAGES, ...FIXED_FILES, ...METHODS.map((it) => `/methods/${it.id}/`)]);
  if ([...content.guide.values()].some((it) => texts(it, 'agreement', '*').length > 0)) pages.add('/agreement/');
  if (
    [...content.guide.values()].some((it) =>
      ['show', 'badges'].some((key) => fields(it.data, ['cards', key])[0]?.value === true),
    )
  )
    pages.add('/cards/');
  const drafts = new Set<string>();
  const moved = new Map<string, string>();
  const panels = [...content.panels.values()];
  for (const source of panels) {
    const hasNoPage = isDraft(source) && !withDrafts;
    const addresses = panelAddresses(entryId(source.file));
    for (const address of [...addresses, ...fileAddresses(source)]) (hasNoPage ? drafts : pages).add(address);
    for (const { value } of texts(source, 'formerly', '*')) {
      for (const [i, address] of panelAddresses(value).entries()) moved.set(address, addresses[i] ?? address);
    }
  }
  for (const file of unread) {
    if (!/\/panels\/[^/]+\/index\.mdx?$/.test(file)) continue;
    for (const address of panelAddresses(entryId(file))) pages.add(address);
  }

  const ids = new Map<string, readonly string[] | undefined>();
  const idsOnce = (page: string, make: () => readonly string[] | undefined) => {
    if (!ids.has(page)) ids.set(page, make());
    return ids.get(page);
  };
  return {
    pages,
    drafts,
    moved,
    isFile: (path) => {
      const file = join(productFolder(), 'public', path);
      return existsSync(file) && statSync(file).isFile();
    },
    idsOf: (page) => {
      const [cautions] = content.cautions.values();
      if (page === '/cautions/' && cautions) return idsOnce(page, () => [...CAUTION_IDS, ...idsIn(cautions)]);
      if (page === '/instruments/')
        return ['main', ...content.instruments.keys(), ...[...content.standards.keys()].map(standardAnchor)];
      const method = METHODS.find((it) => page === `/methods/${it.id}/`);
      const source = method && content.methods.get(method.id);
      if (!source) return idsOnce(page, () => partsOf(page, content));
      const versions = Array.from({ length: method.version }, (_, i) => `version-${i + 1}`);
      return idsOnce(page, () => [...METHOD_IDS, ...versions, ...idsIn(source)]);
    },
  };
}

/** The page of a panel's files, and the files; none where its sessions name none. */
function fileAddresses(source: Source): string[] {
  const files = namedFiles(source).map(({ entry }) => entry.file);
  if (files.length === 0) return [];
  const page = `/panels/${entryId(source.file)}/files/`;
  return [page, ...files.map((it) => `${page}${encodeURIComponent(it)}`)];
}

function panelAddresses(slug: string): string[] {
  return [`/panels/${slug}/`, `/panels/${slug}/methodology/`, `/data/compare/${slug}.json`];
}

import { createHash } from 'node:crypto';
import { globSync, mkdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { AstroPrerenderer } from 'astro';
import { writeWhole } from '../content/read/write-whole.ts';
import type { Ledger, PanelEntry } from '../ledger/ledger.ts';
import { contentFolder, type Loaded } from '../ledger/load-ledger.ts';
import { type Stamps, stampsOf } from '../ledger/panel-stamps.ts';
import { givenTo, withReads } from '../site/shared/page-reads.ts';
import { leanHtml } from './lean-html.ts';
import { picturedPages } from './pictured-pages.ts';
import { tellStage } from './progress.ts';
import { buildStamp } from './source-stamp.ts';

/** What each page is kept under, and what it has read, by a version of the code; the pages lie beside it. */
const LIST = 'pages.json';
const PAGES = 'pages';

/** A page that is kept, or a data file of a panel. */
interface Kept {
  /** Follows from all that it rests on, but for the code, by which the whole list is kept. */
  name: string;
  /** When it was written, ms since 1970, and its bytes: the output is made of links to it, and who writes into that writes here. */
  changed: number;
  size: number;
  reads: { panels: string[]; standings: string[]; all: boolean; given: string[] };
}

/** A page as it was made. */
export interface MadePage {
  bytes: Uint8Array;
  /** Where it is kept, if it is. */
  file?: string;
}

/** What may rest on less than all there is. Other pages and files are few, and go through all panels or through files. */
const CAN_BE_KEPT = /^\/(panels|methods|data\/(compare|bench))\/./;

/** The panel that an address is of. */
const PANEL = /^\/(?:panels|data\/(?:compare|bench))\/([^/]+?)(?:\.json)?(?:\/|$)/;

/**
 * Pages that are kept from one build to the next, under a name that follows from all that they rest on: the code, the
 * shared content, and what of the panels they have read when they were rendered.
 *
 * The list is away while pages are written, so that a build that was stopped leaves nothing that could be taken for whole.
 */
export function keptPages(cache: string) {
  const list = join(cache, LIST);
  const fileOf = (page: string) => join(cache, PAGES, page.endsWith('/') ? `${page}index.html` : page);
  let before: Record<string, Kept> = {};
  const now = new Map<string, Kept>();
  let stamps: Stamps | undefined;
  let source = '';
  let loaded: Loaded | undefined;
  let pictured: ReadonlySet<string> = new Set();
  let [count, done] = [0, 0];

  /** What a panel's pages are given that is made of all panels, as a text; it is the same for all of them. */
  const givenTexts = new Map<string, string>();
  function givenText(panel: PanelEntry, ledger: Ledger, name: string): string | undefined {
    const key = `${name}\n${panel.slug}`;
    const known = givenTexts.get(key);
    if (known !== undefined) return known;
    const given = givenTo(panel, ledger, name);
    if (!given) return undefined;
    const text = JSON.stringify(given.value) ?? '';
    givenTexts.set(key, text);
    return text;
  }

  /** A page's name, by what it has read; undefined where something of it is no more. */
  function nameOf(page: string, reads: Kept['reads']): string | undefined {
    if (!loaded || !stamps || pictured.has(page)) return undefined;
    const panel = loaded.ledger.panels.get(PANEL.exec(page)?.[1] ?? '');
    const hash = createHash('sha256').update(`${stamps.shared}\n${page}\n`);
    for (const part of ['panels', 'standings'] as const) {
      const of = stamps[part];
      for (const it of reads.all ? of.keys() : reads[part]) hash.update(`${part} ${it} ${of.get(it)}\n`);
    }
    for (const name of reads.given) {
      const given = panel && givenText(panel, loaded.ledger, name);
      if (given === undefined) return undefined;
      hash.update(`${name} ${given}\n`);
    }
    return hash.digest('base64url');
  }

  const tell = () => {
    done++;
    tellStage(`Pages: ${done} of ${count}`);
  };

  return {
    /**
     * Before pages are asked for.
     *
     * @param isFresh what was kept is left aside
     */
    open(of: Loaded, isFresh: boolean): void {
      if (isFresh) for (const name of [LIST, PAGES]) rmSync(join(cache, name), { recursive: true, force: true });
      mkdirSync(cache, { recursive: true });
      loaded = of;
      givenTexts.clear();
      source = buildStamp();
      stamps = stampsOf(of, contentFolder());
      pictured = picturedPages(of);
      try {
        const { code, kept } = JSON.parse(readFileSync(list, 'utf8'));
        before = code === source ? kept : {};
      } catch {
        // There is none yet, or it was cut off: all pages are rendered.
        before = {};
      }
      rmSync(list, { force: true });
    },

    /** How many pages there are, to tell how far it is. */
    expect(pages: number): void {
      count = pages;
    },

    /** Where a page lies that was kept, and all that it rests on is as it was. */
    keptFile(page: string): string | undefined {
      const own = before[page];
      if (!own || nameOf(page, own.reads) !== own.name) return undefined;
      const file = fileOf(page);
      const found = statSync(file, { throwIfNoEntry: false });
      if (found?.mtimeMs !== own.changed || found.size !== own.size) return undefined;
      now.set(page, own);
      tell();
      return file;
    },

    /**
     * Has a page made, and keeps it with what it has read.
     *
     * @param page its address below the guide's top; of a page with a slash at both ends
     */
    async made(page: string, make: () => Promise<Uint8Array>): Promise<MadePage> {
      tell();
      if (!CAN_BE_KEPT.test(page)) return { bytes: await make() };
      const { result: bytes, reads } = await withReads(make);
      // A panel that is given to what makes its file was not asked for.
      const panels = new Set([...reads.panels, ...(PANEL.exec(page)?.slice(1) ?? [])]);
      const own = {
        panels: [...panels].toSorted(),
        standings: [...reads.standings].toSorted(),
        all: reads.all,
        given: [...reads.given].toSorted(),
      };
      const name = nameOf(page, own);
      if (name === undefined) return { bytes };
      const file = fileOf(page);
      // Never into what lies there: it may be a page of the published guide too.
      writeWhole(file, bytes);
      const { mtimeMs: changed, size } = statSync(file);
      now.set(page, { name, changed, size, reads: own });
      return { bytes, file };
    },

    /** When all pages and data files are there. */
    close(): void {
      const files = new Set([...now.keys()].map(fileOf));
      for (const path of globSync('**/*.{html,json}', { cwd: join(cache, PAGES) })) {
        const file = join(cache, PAGES, path);
        if (!files.has(file)) rmSync(file);
      }
      writeWhole(list, JSON.stringify({ code: source, kept: Object.fromEntries(now) }));
      now.clear();
    },
  };
}

/**
 * Has Astro take pages that are kept.
 *
 * @param base path of the guide on its host, which Astro asks for pages with
 */
export const keeping =
  (pages: ReturnType<typeof keptPages>, base: string) =>
  (astro: AstroPrerenderer): AstroPrerenderer => ({
    ...astro,
    getStaticPaths: async () => {
      const paths = await astro.getStaticPaths();
      pages.expect(paths.length);
      return paths;
    },
    render: async (request, options) => {
      const page = new URL(request.url).pathname.slice(base.length - 1);
      const kept = pages.keptFile(page);
      const { bytes } = kept
        ? { bytes: await readFile(kept) }
        : await pages.made(page, async () => {
            const rendered = await astro.render(request, options);
            return bytesOf(rendered instanceof Response ? rendered : rendered.response, page);
          });
      return new Response(new Uint8Array(bytes), { headers: { 'content-type': 'text/html' } });
    },
  });

/** A page as it is written, of the answer that it was rendered into. */
export const bytesOf = async (response: Response, page: string): Promise<Uint8Array> =>
  Buffer.from(leanHtml(await response.text(), page));

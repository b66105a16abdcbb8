import { createHash } from 'node:crypto';
import { globSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { AstroPrerenderer } from 'astro';
import { contentFolder, type Loaded } from '../ledger/load-ledger.ts';
import { type Stamps, stampsOf } from '../ledger/panel-stamps.ts';
import { givenTo, withReads } from '../site/shared/page-reads.ts';
import { picturedPages } from './pictured-pages.ts';
import { tellStage } from './progress.ts';
import { sourceStamp } from './source-stamp.ts';

/** What each page is kept under, and what it has read; the pages lie beside it. */
const LIST = 'pages.json';
const PAGES = 'pages';

/** A page that is kept. */
interface Kept {
  /** Follows from all that it rests on. */
  name: string;
  reads: { panels: string[]; all: boolean; given: string[] };
}

/** Pages that may rest on less than all there is. The others are few, and go through all panels or through files. */
const CAN_BE_KEPT = /^\/(panels|methods)\/./;

/**
 * Pages that are kept from one build to the next, under a name that follows from all that they rest on: the code, the
 * shared content, and what of the panels they have read when they were rendered.
 *
 * The list is away while pages are written, so that a build that was stopped leaves nothing that could be taken for whole.
 */
export function keptPages(cache: string) {
  const list = join(cache, LIST);
  const fileOf = (page: string) => join(cache, PAGES, page, 'index.html');
  let before: Record<string, Kept> = {};
  const now = new Map<string, Kept>();
  let stamps: Stamps | undefined;
  let source = '';
  let loaded: Loaded | undefined;
  let pictured: ReadonlySet<string> = new Set();
  let [count, done] = [0, 0];

  /** A page's name, by what it has read; undefined where something of it is no more. */
  function nameOf(page: string, reads: Kept['reads']): string | undefined {
    if (!loaded || !stamps || pictured.has(page)) return undefined;
    const panel = loaded.ledger.panels.get(page.split('/')[2] ?? '');
    const hash = createHash('sha256').update(`${source}\n${stamps.shared}\n${page}\n`);
    for (const it of reads.all ? stamps.panels.keys() : reads.panels) hash.update(`${it} ${stamps.panels.get(it)}\n`);
    for (const name of reads.given) {
      const given = panel && givenTo(panel, loaded.ledger, name);
      if (!given) return undefined;
      hash.update(`${name} ${JSON.stringify(given.value)}\n`);
    }
    return hash.digest('base64url');
  }

  /** Its bytes, where it was kept and all that it rests on is as it was. */
  async function keptBytes(page: string): Promise<Buffer<ArrayBuffer> | undefined> {
    const own = before[page];
    if (!own || nameOf(page, own.reads) !== own.name) return undefined;
    try {
      return await readFile(fileOf(page));
    } catch {
      return undefined;
    }
  }

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
      source = sourceStamp();
      stamps = stampsOf(of, contentFolder());
      pictured = picturedPages(of);
      try {
        before = JSON.parse(readFileSync(list, 'utf8'));
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

    /**
     * A page as it was kept, or as it is rendered now, and then noted with what it has read.
     *
     * @param page its address below the guide's top, with a slash at both ends
     */
    async render(page: string, render: () => Promise<Response>): Promise<Response> {
      const kept = await keptBytes(page);
      done++;
      tellStage(`Pages: ${done} of ${count}`);
      if (kept) {
        now.set(page, before[page] as Kept);
        return new Response(kept, { headers: { 'content-type': 'text/html' } });
      }
      const { result, reads } = await withReads(render);
      if (!CAN_BE_KEPT.test(page)) return result;
      const own = { panels: [...reads.panels].toSorted(), all: reads.all, given: [...reads.given].toSorted() };
      const name = nameOf(page, own);
      if (name === undefined) return result;
      const bytes = Buffer.from(await result.arrayBuffer());
      const file = fileOf(page);
      await mkdir(dirname(file), { recursive: true });
      await writeFile(file, bytes);
      now.set(page, { name, reads: own });
      return new Response(bytes, result);
    },

    /** When all pages are there. */
    close(): void {
      for (const path of globSync('**/index.html', { cwd: join(cache, PAGES) })) {
        if (!now.has(`/${dirname(path)}/`)) rmSync(join(cache, PAGES, path));
      }
      const draft = `${list}.draft`;
      writeFileSync(draft, JSON.stringify(Object.fromEntries(now)));
      renameSync(draft, list);
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
    render: (request, options) => {
      const page = new URL(request.url).pathname.slice(base.length - 1);
      return pages.render(page, async () => {
        const rendered = await astro.render(request, options);
        return rendered instanceof Response ? rendered : rendered.response;
      });
    },
  });

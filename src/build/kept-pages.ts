import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { AstroPrerenderer } from 'astro';
import { contentFolder, type Loaded } from '../ledger/load-ledger.ts';
import { type Stamps, stampsOf } from '../ledger/panel-stamps.ts';
import { givenTo, type PageReads, setPageKey, withReads } from '../site/shared/page-reads.ts';
import { tellStage } from './progress.ts';
import { sourceStamp } from './source-stamp.ts';

/** Astro's own list of the pages that it has kept, in its cache folder; the pages lie beside it. */
const ASTRO_LIST = 'incremental-build.json';
/** Ours: that list with names of our own, and what each page has read. */
const LIST = 'pages.json';
/** Astro's store of content, which would mix the entries of two content folders. */
const ASTRO_CONTENT = ['data-store.json', 'data-store'];

/** What was kept, as far as it is looked at. */
interface Kept {
  astro: { routes: Record<string, { paths: Record<string, { cacheKey: string }> }> };
  reads: Record<string, { panels: string[]; all: boolean; given: string[] }>;
}

/**
 * Pages of panels that are kept from one build to the next, under a name that follows from all that they rest on: the
 * code, the shared content, and what of the panels they have read when they were rendered.
 *
 * Astro keeps the pages and compares names. Since it is told a name before it renders, and what a page reads is known
 * only afterwards, names are put right in its list at the end. The list is away while pages are written, so that
 * a build that was stopped leaves nothing that could be taken for whole.
 *
 * @param base path of the guide on its host, which Astro asks for pages with
 */
export function keptPages(cache: string, base = '/') {
  const [list, astroList] = [join(cache, LIST), join(cache, ASTRO_LIST)];
  let before: Kept['reads'] = {};
  const rendered = new Map<string, PageReads>();
  let stamps: Stamps | undefined;
  let source = '';
  let count = 0;

  /** A page's name, by what it has read; undefined where something of it is no more. */
  function nameOf(page: string, own: Kept['reads'][string] | undefined, { ledger }: Loaded): string | undefined {
    const [, , slug = ''] = page.split('/');
    const panel = ledger.panels.get(slug);
    if (!own || !stamps || !panel) return undefined;
    const hash = createHash('sha256').update(`${source}\n${stamps.shared}\n${page}\n`);
    for (const it of own.all ? stamps.panels.keys() : own.panels) hash.update(`${it} ${stamps.panels.get(it)}\n`);
    for (const name of own.given) {
      const given = givenTo(panel, ledger, name);
      if (!given) return undefined;
      hash.update(`${name} ${JSON.stringify(given.value)}\n`);
    }
    return hash.digest('base64url');
  }

  return {
    /** Before Astro looks at its cache. */
    open(isFresh: boolean): void {
      if (isFresh) rmSync(cache, { recursive: true, force: true });
      mkdirSync(cache, { recursive: true });
      for (const name of [...ASTRO_CONTENT, ASTRO_LIST]) rmSync(join(cache, name), { recursive: true, force: true });
      try {
        const kept: Kept = JSON.parse(readFileSync(list, 'utf8'));
        before = kept.reads;
        writeFileSync(astroList, JSON.stringify(kept.astro));
      } catch {
        // There is none yet, or it was cut off: all pages are rendered.
        before = {};
      }
    },

    /** Before pages are asked for. */
    name(loaded: Loaded): void {
      source = sourceStamp();
      stamps = stampsOf(loaded, contentFolder());
      // A page that has not been read yet has a name that no page was kept under.
      setPageKey((page) => nameOf(page, before[page], loaded) ?? 'new');
    },

    /** Notes what pages read. */
    watch: (astro: AstroPrerenderer): AstroPrerenderer => ({
      ...astro,
      getStaticPaths: async () => {
        const paths = await astro.getStaticPaths();
        // Astro has read its list by now; from here on pages are written over those that were kept.
        for (const file of [list, astroList]) rmSync(file, { force: true });
        count = paths.length;
        return paths;
      },
      render: async (request, options) => {
        const { result, reads } = await withReads(() => Promise.resolve(astro.render(request, options)));
        rendered.set(new URL(request.url).pathname.slice(base.length - 1), reads);
        tellStage(`Pages: ${rendered.size} of ${count}, less those that are kept as they were`);
        return result;
      },
    }),

    /** When all pages are there. */
    close(loaded: Loaded): void {
      if (!existsSync(astroList)) return;
      const astro: Kept['astro'] = JSON.parse(readFileSync(astroList, 'utf8'));
      rmSync(astroList);
      const reads: Kept['reads'] = {};
      for (const { paths } of Object.values(astro.routes)) {
        for (const [path, kept] of Object.entries(paths)) {
          const page = `${path.replace(/\/$/, '')}/`;
          const now = rendered.get(page);
          const own = now
            ? { panels: [...now.panels].toSorted(), all: now.all, given: [...now.given].toSorted() }
            : before[page];
          const name = nameOf(page, own, loaded);
          if (own && name !== undefined) {
            reads[page] = own;
            kept.cacheKey = name;
          } else delete paths[path];
        }
      }
      setPageKey(undefined);
      rendered.clear();
      const draft = `${list}.draft`;
      writeFileSync(draft, JSON.stringify({ astro, reads } satisfies Kept));
      renameSync(draft, list);
    },
  };
}

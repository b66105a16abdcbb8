import { writeFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import type { AstroPrerenderer } from 'astro';
import type { Loaded } from '../ledger/load-ledger.ts';
import { withReads } from '../site/shared/page-reads.ts';
import { type KeptNames, type KeptReads, keptNames, readsOf } from './kept-names.ts';
import { type KeptPieces, keptPieces, type LongFile } from './kept-pieces.ts';
import { isAsWritten, openStore, type Store, type Written, written } from './kept-store.ts';
import { leanHtml } from './lean-html.ts';
import { picturedPages } from './pictured-pages.ts';
import { tellStage } from './progress.ts';
import { writeNew } from './write-new.ts';

/** A page that is kept, or a data file of a panel; it lies under its name. */
interface Kept extends Written {
  name: string;
  reads: KeptReads;
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
const panelOf = (page: string) => PANEL.exec(page)?.[1];

/**
 * Pages that are kept from one build to the next, under a name that follows from all that they rest on: the code, the
 * shared content, and what of the panels they have read when they were rendered.
 *
 * The list is away while pages are written, so that a build that was stopped leaves nothing that could be taken for whole.
 */
export function keptPages(cache: string) {
  let store: Store<Kept> | undefined;
  const now = new Map<string, Kept>();
  let names: KeptNames | undefined;
  let pieces: KeptPieces | undefined;
  let pictured: ReadonlySet<string> = new Set();
  let [count, done] = [0, 0];

  const nameOf = (page: string, reads: KeptReads) =>
    pictured.has(page) ? undefined : names?.nameOf(page, panelOf(page), reads);

  const tell = () => {
    done++;
    // Panels' data files come after the pages, and are none of them.
    if (done <= count) tellStage(`Pages: ${done} of ${count}`);
  };

  return {
    /**
     * Before pages are asked for.
     *
     * @param isFresh what was kept is left aside
     */
    open(of: Loaded, isFresh: boolean): void {
      store = openStore(cache, 'pages', isFresh);
      names = keptNames(of);
      pictured = picturedPages(of);
      pieces = keptPieces(cache, names, isFresh);
    },

    /** How many pages there are, to tell how far it is. */
    expect(pages: number): void {
      count = pages;
    },

    /** Where a page lies that was kept, and all that it rests on is as it was. */
    keptFile(page: string): string | undefined {
      const own = store?.before[page];
      if (!store || !own || nameOf(page, own.reads) !== own.name) return undefined;
      const file = store.fileOf(own.name);
      if (!isAsWritten(file, own)) return undefined;
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
      const { result: bytes, reads: noted } = await withReads(make);
      const reads = readsOf(noted, panelOf(page));
      const name = nameOf(page, reads);
      if (!store || name === undefined) return { bytes };
      const file = store.fileOf(name);
      now.set(page, { name, ...written(writeNew(file, (it) => writeFileSync(it, bytes))), reads });
      return { bytes, file };
    },

    /** A long data file, which has pieces of panels that are kept in the same way. */
    longFile: (path: string): LongFile | undefined => pieces?.begin(path),

    /** When all pages and data files are there. */
    close(): void {
      store?.close(now, new Set([...now.values()].map(({ name }) => name)));
      pieces?.close();
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

import { cp } from 'node:fs/promises';
import { join } from 'node:path';
import type { RouteData } from 'astro';
import { StaticPaths } from 'astro/runtime/prerender/static-paths.js';
import { bytesOf, type keptPages } from '../kept-pages.ts';
import { layFile } from '../lay-file.ts';
import { indexPages, isSearched } from '../search-index.ts';
import type { Program } from './kept-programs.ts';
import { PageFault } from './page-fault.ts';

/** The host that pages are asked for with; none of it gets into them. */
const HOST = 'http://localhost';

/** What Astro's program offers; its own build talks to it in the same way. */
interface App {
  setInternals(internals: object): void;
  setOptions(options: object): void;
  render(request: Request, options: { routeData: RouteData }): Promise<Response>;
}

/**
 * Writes every page with a program that Astro has made, and all that lies beside the pages, as Astro's build would have.
 * Those that the search finds come first, so that the indexer, a process of its own, works while the others are rendered.
 *
 * @param grown an empty folder
 * @param base path of the guide on its host
 * @param textOf the file of the tester's own that is compiled into a page
 * @returns the index on its way
 * @throws PageFault where a page can't be rendered
 * @throws where the program is none that can be used in this way
 */
export async function renderPages(
  { entry, assets, styles }: Program,
  {
    pages,
    grown,
    base,
    textOf,
  }: {
    pages: ReturnType<typeof keptPages>;
    grown: string;
    base: string;
    textOf: (page: string) => string | undefined;
  },
): Promise<{ indexed: Promise<void> }> {
  const { app } = (await import(entry.href)) as { app: App };
  app.setInternals({ pagesByKeys: new Map(styles), entrySpecifierToBundleMap: new Map() });
  app.setOptions({
    settings: { scripts: [] },
    logger: { options: { destination: { write: ({ message }: { message: string }) => console.error(message) } } },
  });
  await cp(assets, grown, { recursive: true });
  const paths = await new StaticPaths(app as unknown as ConstructorParameters<typeof StaticPaths>[0]).getAll();
  pages.expect(paths.length);
  // One after another: nothing in them waits, and several at a time would only be in memory together.
  const write = async (them: typeof paths) => {
    for (const { pathname, route } of them) {
      if (route.type !== 'page') throw new Error(`${pathname} is no page`);
      const page = addressOf(pathname);
      const request = new Request(new URL(`${base.slice(0, -1)}${page}`, HOST));
      await layFile(pages, page, join(grown, fileOf(page)), async () => {
        try {
          return await bytesOf(await app.render(request, { routeData: route }), page);
        } catch (error) {
          throw new PageFault(page, textOf(page), error);
        }
      });
    }
  };
  const { searched = [], others = [] } = Object.groupBy(paths, ({ pathname }) =>
    isSearched(fileOf(addressOf(pathname))) ? 'searched' : 'others',
  );
  await write(searched);
  const indexed = indexPages(grown);
  try {
    await write(others);
  } catch (error) {
    // Nothing is left at work in a folder that is about to go.
    await indexed.catch(() => {});
    throw error;
  }
  return { indexed };
}

/** A page's address below the guide's top, with a slash at both ends. */
const addressOf = (pathname: string) => `/${pathname}/`.replaceAll(/\/{2,}/g, '/');

const fileOf = (page: string) => (page === '/404/' ? '404.html' : `${page.slice(1)}index.html`);

import { globSync, rmSync } from 'node:fs';
import { join, matchesGlob } from 'node:path';
import { close, createIndex } from 'pagefind';

/**
 * What the search finds. The calculation pages repeat the panels' own in more detail and would crowd them out. In the
 * pages, `data-pagefind-ignore` marks tables of numbers, since nobody looks for 42.8, and what stands on every panel's
 * page alike: it made up most of the index, and of the indexer's time and memory.
 */
const SEARCHED = '{index.html,panels/*/index.html,methods/**/*.html,cautions/*.html,instruments/*.html}';

/** Whether the search finds a file of the guide; nothing else is read for it. */
export const isSearched = (file: string): boolean => matchesGlob(file, SEARCHED);

/** What comes with an index and no page loads: the indexer's own faces of a search. */
const UNUSED = 'pagefind-{ui,modular-ui,component-ui,highlight}.{js,css}';

/**
 * Writes the search index beside the pages that it finds, which have to be there; the indexer is a process of its own.
 *
 * @throws with what the indexer said, where it fails
 */
export function indexPages(folder: string): Promise<void> {
  const indexed = index(folder);
  // Whoever asked awaits it later, and hears of a failure then.
  indexed.catch(() => {});
  return indexed;
}

async function index(folder: string): Promise<void> {
  try {
    // Names of methods, metrics and files in the method pages are for links and data: nobody looks for them.
    const { index: made, errors } = await createIndex({ excludeSelectors: ['code'] });
    if (!made) throw new Error(errors.join('\n'));
    for (const step of [
      () => made.addDirectory({ path: folder, glob: SEARCHED }),
      () => made.writeFiles({ outputPath: join(folder, 'pagefind') }),
    ]) {
      const { errors } = await step();
      if (errors.length > 0) throw new Error(errors.join('\n'));
    }
    const written = join(folder, 'pagefind');
    for (const name of globSync(UNUSED, { cwd: written })) rmSync(join(written, name));
  } catch (error) {
    throw new Error(`the search index could not be made:\n${error instanceof Error ? error.message : error}`);
  } finally {
    await close();
  }
}

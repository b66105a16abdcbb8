import { globSync, readFileSync, rmSync } from 'node:fs';
import { join, matchesGlob } from 'node:path';
import { close, createIndex, type PagefindIndex } from 'pagefind';
import { giveTurn } from './give-turn.ts';
import { searchedPart } from './searched-part.ts';

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
      () => addPages(made, folder),
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

/** Hands it what the search finds of each page, in an order that is no disk's: by it pages are counted in the index. */
async function addPages(index: PagefindIndex, folder: string): Promise<{ errors: string[] }> {
  const added: ReturnType<PagefindIndex['addHTMLFile']>[] = [];
  for (const path of globSync(SEARCHED, { cwd: folder }).toSorted()) {
    // Letter by letter of its bytes: what is looked for in a page is ASCII, and only a little of it is read as a text.
    const part = searchedPart(readFileSync(join(folder, path), 'latin1'));
    const content = Buffer.from(part, 'latin1').toString();
    added.push(index.addHTMLFile({ sourcePath: path, content }));
    await giveTurn();
  }
  return { errors: (await Promise.all(added)).flatMap(({ errors }) => errors) };
}

/**
 * The indexer gets what the search finds of each page: its index is, byte for byte, that of whole pages, but for the address
 * of a page's first photo, which no result shows.
 */
import { globSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { close, createIndex } from 'pagefind';
import { expect, test } from 'vitest';
import { isSearched } from '../../src/build/search-index.ts';
import { searchedPart } from '../../src/build/searched-part.ts';
import { DEMO_SITE } from '../support/demo-folder.ts';
import { fingerprints } from './build.ts';

test('an index of whole pages is the one that is published', async () => {
  const pages = globSync('**/*.html', { cwd: DEMO_SITE }).filter(isSearched).toSorted();
  const wholeOf = (page: string) => readFileSync(join(DEMO_SITE, page), 'utf8');
  // Otherwise this would hold one thing against itself.
  const less = pages.filter((it) => searchedPart(wholeOf(it)).length < wholeOf(it).length / 2);
  expect(less.filter((it) => it.startsWith('panels/')).length).toBeGreaterThan(8);
  const folder = mkdtempSync(join(tmpdir(), 'search-index-'));
  try {
    const { index } = await createIndex({ excludeSelectors: ['code'] });
    const unpictured = (page: string) => wholeOf(page).replace(/<img(?:[^>"]|"[^"]*")*>/g, '');
    await Promise.all(
      pages.map((it) =>
        index?.addHTMLFile({ sourcePath: it, content: it.startsWith('panels/') ? unpictured(it) : wholeOf(it) }),
      ),
    );
    await index?.writeFiles({ outputPath: folder });
    const whole = fingerprints(folder);
    const published = fingerprints(join(DEMO_SITE, 'pagefind'));
    expect(Object.keys(published).length).toBeGreaterThan(pages.length);
    for (const [name, print] of Object.entries(published)) expect(whole[name], name).toBe(print);
    const namesIn = (index: string) => readdirSync(join(index, 'fragment')).toSorted();
    expect(namesIn(folder)).toEqual(namesIn(join(DEMO_SITE, 'pagefind')));
  } finally {
    await close();
    rmSync(folder, { recursive: true, force: true });
  }
});

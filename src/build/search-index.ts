import { join } from 'node:path';
import { close, createIndex } from 'pagefind';

/**
 * Writes the search index beside the pages. The working pages repeat the panels' own in more detail and would
 * crowd them out, so they stay out of it.
 *
 * @returns how many pages were indexed
 */
export async function indexPages(folder: string): Promise<number> {
  const { index, errors } = await createIndex({});
  if (!index) throw new Error(`the search index could not be made: ${errors.join('; ')}`);
  const found = await index.addDirectory({
    path: folder,
    glob: '{index.html,panels/*/index.html,methods/**/*.html,cautions/*.html,instruments/*.html}',
  });
  const written = await index.writeFiles({ outputPath: join(folder, 'pagefind') });
  await close();
  const problems = [...found.errors, ...written.errors];
  if (problems.length > 0) throw new Error(`the search index could not be made: ${problems.join('; ')}`);
  return found.page_count;
}

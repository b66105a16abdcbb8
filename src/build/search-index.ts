import { spawn } from 'node:child_process';
import { join } from 'node:path';

/**
 * What the search finds. The working pages repeat the panels' own in more detail and would crowd them out. In the
 * pages, `data-pagefind-ignore` marks tables of numbers, since nobody looks for 42.8, and what stands on every panel's
 * page alike: it made up most of the index, and of the indexer's time and memory.
 */
const SEARCHED = '{index.html,panels/*/index.html,methods/**/*.html,cautions/*.html,instruments/*.html}';

/**
 * Writes the search index beside the pages, by the indexer's own program: it streams its output to the disk,
 * where its library keeps all of it in memory, twice over.
 *
 * @throws with what the indexer said, where it fails
 */
export async function indexPages(folder: string): Promise<void> {
  const child = spawn(
    await indexer(),
    ['--site', folder, '--output-path', join(folder, 'pagefind'), '--glob', SEARCHED],
    { stdio: ['ignore', 'pipe', 'pipe'] },
  );
  let said = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream.setEncoding('utf8').on('data', (text: string) => {
      said += text;
    });
  }
  const code = await new Promise<number | null>((resolve, reject) => {
    child.on('error', reject).on('close', resolve);
  });
  if (code !== 0) throw new Error(`the search index could not be made:\n${said}`);
}

/** The program itself, found as the indexer's own starter finds it, which would be one more process that waits. */
async function indexer(): Promise<string> {
  const finder: { resolveBinaryPath(names: string[]): string } = await import(
    new URL('./resolveBinary.js', import.meta.resolve('pagefind')).href
  );
  return finder.resolveBinaryPath(['pagefind_extended', 'pagefind']);
}

import { glob, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { prefixHtml } from './prefix-html.ts';

/**
 * Has every page of a built folder call the guide's own addresses by the path that it is published under. A guide at the
 * top of its host has nothing to change, and no page is opened.
 *
 * @param base with a slash at both ends
 * @param assets the bundler's folder, whose addresses have the path already
 */
export async function prefixPages(folder: string, base: string, assets: string): Promise<void> {
  if (base === '/') return;
  for await (const page of glob('**/*.html', { cwd: folder })) {
    const file = join(folder, page);
    const html = await readFile(file, 'utf8');
    // A page is a link to one that is kept, and that one stays as it is.
    await rm(file);
    await writeFile(file, prefixHtml(html, base, [`${base}${assets}/`]));
  }
}

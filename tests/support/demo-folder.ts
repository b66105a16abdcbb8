/**
 * The demonstration that tests rest on, whatever a tester has put into content/. Guide, panels, makers and instruments are
 * kept in tests/demo/content; the pages of methods and cautions are the product's.
 */
import { cpSync, existsSync, globSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const at = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url));

/** What the demonstration has of its own. */
export const DEMO_SOURCE = at('tests/demo/content');

/** The whole demonstration, once `layDemo` has put it together. */
export const DEMO_FOLDER = at('.build/demo/content');

/** Where the tests of the built site find it built. */
export const DEMO_SITE = at('.build/demo/site');

/**
 * Puts the demonstration together. A file that is there already as it should be is not touched, so that several
 * processes may call this while others read.
 */
export function layDemo(): void {
  const wanted = new Map(globSync('**/*.*', { cwd: DEMO_SOURCE }).map((path) => [path, join(DEMO_SOURCE, path)]));
  for (const path of globSync('**/*.*', { cwd: DEMO_FOLDER })) {
    if (!wanted.has(path)) rmSync(join(DEMO_FOLDER, path));
  }
  for (const [path, source] of wanted) {
    const target = join(DEMO_FOLDER, path);
    if (isAlike(source, target)) continue;
    mkdirSync(dirname(target), { recursive: true });
    cpSync(source, target);
  }
}

function isAlike(one: string, other: string): boolean {
  return existsSync(other) && readFileSync(one).equals(readFileSync(other));
}

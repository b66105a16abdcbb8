import { globSync, mkdirSync, readFileSync, renameSync, rmSync, statSync, utimesSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { AstroIntegration } from 'astro';
import { cacheFolder } from '../../content/read/cache-folder.ts';

/** What Astro knows of its pages; of it, what a page's head takes styles from is kept. */
export type PagesOfAstro = Parameters<NonNullable<AstroIntegration['hooks']['astro:build:setup']>>[0]['pages'];

/** What Astro's bundler has made of the code. */
export interface Program {
  /** The module that renders pages. */
  entry: URL;
  /** Styles, scripts, typefaces: what lies beside the pages. */
  assets: string;
  /** Of each page of Astro's: where it is found, and its styles. */
  styles: ReadonlyArray<readonly [string, { styles: unknown[] }]>;
}

/** Parts of a program's folder. */
export const PARTS = { server: 'server', assets: 'assets', styles: 'styles.json' } as const;

/** Programs that are kept: other places on a host, other guides' texts. */
const MOST = 6;

const store = () => resolve(cacheFolder(), 'programs');

/** The program of a name, where one was kept. */
export function keptProgram(key: string): Program | undefined {
  const folder = join(store(), key);
  try {
    const styles = JSON.parse(readFileSync(join(folder, PARTS.styles), 'utf8'));
    const [entry] = globSync('prerender-entry.*.mjs', { cwd: join(folder, PARTS.server) });
    if (!entry) return undefined;
    const now = new Date();
    utimesSync(folder, now, now);
    return { entry: pathToFileURL(join(folder, PARTS.server, entry)), assets: join(folder, PARTS.assets), styles };
  } catch {
    // There is none yet, or another build has just taken it away.
    return undefined;
  }
}

/** A folder in which a program may grow, beside those that are kept. */
export function draftOf(key: string): string {
  const draft = join(store(), `${key}.${process.pid}`);
  rmSync(draft, { recursive: true, force: true });
  mkdirSync(draft, { recursive: true });
  return draft;
}

/** Gives a whole program its name, and lets go of the longest unused. */
export function keepProgram(draft: string, key: string): void {
  const folder = join(store(), key);
  rmSync(folder, { recursive: true, force: true });
  renameSync(draft, folder);
  const others = globSync('*', { cwd: store() }).map((it) => join(store(), it));
  const age = new Map(others.map((it) => [it, statSync(it, { throwIfNoEntry: false })?.mtimeMs ?? 0]));
  for (const it of others.toSorted((a, b) => (age.get(b) ?? 0) - (age.get(a) ?? 0)).slice(MOST)) {
    rmSync(it, { recursive: true, force: true });
  }
}

/** Leaves nothing of a name that could be taken. */
export function forgetProgram(key: string): void {
  rmSync(join(store(), key), { recursive: true, force: true });
}

import { createHash } from 'node:crypto';
import { existsSync, globSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { cp } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { AstroIntegration } from 'astro';
import { fileHash } from '../content/read/files/file-hash.ts';
import { contentFolder, type Loaded } from '../ledger/load-ledger.ts';
import { buildStamp } from './source-stamp.ts';

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

const FOLDER = 'program';
/** Written last: what it stands for is whole. */
const KEY = 'program.json';

/** Where Astro puts the program that renders pages, below the output; it goes when they are written. */
const SERVER = '.prerender';

/**
 * Keeps what Astro's bundler has made, which is most of a build after a price has changed: for the same code and texts it
 * makes the same. Front matter is no part of it, since pages take all figures from the ledger.
 *
 * @param cache what stays from build to build
 */
export function keptProgram(cache: string) {
  const [folder, list] = [join(cache, FOLDER), join(cache, KEY)];
  return {
    /** Leaves nothing that could be taken. */
    forget(): void {
      for (const it of [list, folder]) rmSync(it, { recursive: true, force: true });
    },

    /** The program for this content, where one was kept. */
    open(loaded: Loaded): Program | undefined {
      try {
        const { key, styles } = JSON.parse(readFileSync(list, 'utf8'));
        if (key !== programKey(loaded)) return undefined;
        const [entry] = globSync('prerender-entry.*.mjs', { cwd: join(folder, 'server') });
        const assets = join(folder, 'assets');
        if (!entry || !existsSync(assets)) return undefined;
        return { entry: pathToFileURL(join(folder, 'server', entry)), assets, styles };
      } catch {
        // There is none, or it was cut off.
        return undefined;
      }
    },

    /**
     * When Astro has written all pages, and still has its program.
     *
     * @param grown where it writes
     */
    async save(grown: string, pages: PagesOfAstro, loaded: Loaded): Promise<void> {
      this.forget();
      mkdirSync(folder, { recursive: true });
      await cp(join(grown, SERVER), join(folder, 'server'), { recursive: true });
      await cp(grown, join(folder, 'assets'), {
        recursive: true,
        filter: (path) => basename(path) !== SERVER && !path.endsWith('.html'),
      });
      const styles = [...pages].map(([page, { styles }]) => [page, { styles }] as const);
      const draft = `${list}.draft`;
      writeFileSync(draft, JSON.stringify({ key: programKey(loaded), styles }));
      renameSync(draft, list);
    },
  };
}

/** Stands for all that the bundler sees: the code, and the content without what panels have in their front matter. */
function programKey({ content }: Loaded): string {
  const folder = contentFolder();
  const hash = createHash('sha256').update(buildStamp());
  for (const path of globSync('**/*.{yaml,mdx,md,svg,png,jpg,jpeg,webp,avif,gif,tiff}', { cwd: folder }).toSorted()) {
    hash.update(`${path}\n`);
    if (!/^panels[/\\][^/\\]+[/\\]index\.mdx?$/.test(path)) hash.update(fileHash(join(folder, path)));
  }
  for (const [slug, { source }] of content.panels) hash.update(`${slug}\n${source.file}\n${source.body}\n`);
  return hash.digest('base64url');
}

import { createHash } from 'node:crypto';
import { globSync } from 'node:fs';
import { join, resolve, sep } from 'node:path';
import { fileHash } from '../../content/read/files/file-hash.ts';
import { TEXTS, textFiles } from '../../content/read/product-texts.ts';
import { contentFolder, type Loaded } from '../../ledger/load-ledger.ts';
import { sourceFolder } from '../astro-root.ts';
import { buildStamp } from '../source-stamp.ts';
import { compiledNotes } from './program-order.ts';

/** What a text of the tester's own can take in; panels' readings and notes it can't. */
const TAKEN_IN = '**/*.{yaml,mdx,md,svg,png,jpg,jpeg,webp,avif,gif,tiff}';
const OF_PANEL = /^panels[/\\][^/\\]+[/\\]index\.mdx?$/;

/**
 * Stands for all that the bundler sees: the code, where it lies and where the guide will, and texts of the content that
 * are compiled. Figures, prices and plain notes are no part of it, since pages take them from the ledger.
 *
 * @param base path of the guide on its host
 */
export function programKey(loaded: Pick<Loaded, 'content'>, base: string): string {
  const folder = resolve(contentFolder());
  const hash = createHash('sha256').update(`${buildStamp()}\n${sourceFolder()}\n${resolve('.')}\n${base}\n`);
  hash.update(JSON.stringify(compiledNotes(loaded)));
  const own = TEXTS.flatMap((name) => [...textFiles(name, folder).values()]).filter((it) => isBelow(it, folder));
  if (own.length > 0) {
    for (const path of globSync(TAKEN_IN, { cwd: folder }).toSorted()) {
      if (!OF_PANEL.test(path)) hash.update(`${path}\n${fileHash(join(folder, path))}\n`);
    }
    hash.update(folder);
  }
  return hash.digest('base64url');
}

const isBelow = (path: string, folder: string) => resolve(path).startsWith(folder + sep);

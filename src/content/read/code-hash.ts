import { createHash } from 'node:crypto';
import { globSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { productFolder } from './product-folder.ts';

/**
 * Stands for source that results follow from, and for the engine that runs it; undefined where it can't be read, so that
 * nothing may be kept by it.
 *
 * @param parts folders and files below the product's own
 */
export function codeHash(parts: readonly string[]): string | undefined {
  const hash = createHash('sha256').update(process.version);
  for (const part of parts) {
    const own = known.get(part) ?? partHash(part);
    if (own === undefined) return undefined;
    known.set(part, own);
    hash.update(own);
  }
  return hash.digest('hex');
}

/** Of this process, whose code stays as it is: several stores rest on the same hundreds of files. */
const known = new Map<string, string>();

function partHash(part: string): string | undefined {
  const place = join(productFolder(), part);
  const isFolder = statSync(place, { throwIfNoEntry: false })?.isDirectory();
  if (isFolder === undefined) return undefined;
  const hash = createHash('sha256');
  const paths = isFolder ? globSync('**/*.ts', { cwd: place }).toSorted() : [''];
  for (const path of paths) hash.update(`${part}/${path}`).update(readFileSync(join(place, path)));
  return hash.digest('hex');
}

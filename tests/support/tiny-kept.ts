import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type KeptFiles, keptFiles } from '../../src/content/read/kept-files.ts';
import type { ParsedSource } from '../../src/content/read/parse-source.ts';
import type { SourceRead } from '../../src/content/read/read-source.ts';
import type { Source } from '../../src/content/read/source.ts';

/** What a worker knows of the tiny content's own files, by name and the bytes that each was laid out with. */
const reads = new Map<string, { bytes: Buffer; read: SourceRead }>();
const parses = new WeakMap<Source, ParsedSource<unknown>>();

/**
 * What is kept of one tiny folder: of a file that has changed since it was laid out, its last reading; of all others, that
 * of every tiny folder before. A hundred tests each change one file of a folder of their own.
 *
 * @param laid the names of its files, as they were laid out
 */
export function tinyKept(folder: string, laid: readonly string[]): KeptFiles {
  const own = keptFiles();
  const pristine = new Map(laid.map((name) => [join(folder, name), readFileSync(join(folder, name))]));
  /** Sources of this folder, with those that they were first read as. */
  const first = new Map<Source, Source>();
  const here = new Map<string, SourceRead>();
  return {
    source(path, shownAs, read) {
      const bytes = pristine.get(path);
      if (!bytes?.equals(bytesOf(path))) return own.source(path, shownAs, read);
      const known = reads.get(shownAs);
      const base = known?.bytes.equals(bytes) ? known.read : read();
      reads.set(shownAs, { bytes, read: base });
      const copy = here.get(shownAs) ?? (base.source ? { ...base, source: { ...base.source, path } } : base);
      here.set(shownAs, copy);
      if (base.source && copy.source) first.set(copy.source, base.source);
      return copy;
    },
    parsed<T>(id: string, source: Source, parse: () => ParsedSource<T>) {
      const base = first.get(source);
      if (!base) return own.parsed(id, source, parse);
      const { entry, problems } = (parses.get(base) ?? parse()) as ParsedSource<T>;
      parses.set(base, { entry, problems });
      return { entry: entry && { ...entry, source }, problems };
    },
  };
}

/** Nothing where the file is gone or can't be read: its reading tells. */
function bytesOf(path: string): Buffer {
  try {
    return readFileSync(path);
  } catch {
    return Buffer.alloc(0);
  }
}

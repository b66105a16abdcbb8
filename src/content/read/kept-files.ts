import { readFileSync } from 'node:fs';
import type { ParsedSource } from './parse-source.ts';
import type { SourceRead } from './read-source.ts';
import type { Source } from './source.ts';

/**
 * What was made of content files when they were read last: a file whose bytes are the same is neither parsed nor held
 * against its schema again, and gives the very same source and entry. For whoever reads one folder again and again, and
 * changes nothing of what it is given.
 */
export interface KeptFiles {
  /** What a file is read to; by `read` where its bytes are not those of the last time. */
  source(path: string, shownAs: string, read: () => SourceRead): SourceRead;
  /** What its source came to. */
  parsed<T>(id: string, source: Source, parse: () => ParsedSource<T>): ParsedSource<T>;
}

/** Keeps nothing. */
export const KEEP_NOTHING: KeptFiles = {
  source: (_path, _shownAs, read) => read(),
  parsed: (_id, _source, parse) => parse(),
};

/** Keeps what it is asked for, from one reading to the next. */
export function keptFiles(): KeptFiles {
  const sources = new Map<string, { bytes: Buffer; shownAs: string; read: SourceRead }>();
  const entries = new WeakMap<Source, { id: string; parsed: ParsedSource<unknown> }>();
  return {
    source(path, shownAs, read) {
      const bytes = bytesOf(path);
      const known = sources.get(path);
      if (bytes && known?.shownAs === shownAs && known.bytes.equals(bytes)) return known.read;
      const result = read();
      if (bytes) sources.set(path, { bytes, shownAs, read: result });
      else sources.delete(path);
      return result;
    },
    parsed<T>(id: string, source: Source, parse: () => ParsedSource<T>) {
      const known = entries.get(source);
      // A source belongs to one collection, and so to one schema.
      if (known?.id === id) return known.parsed as ParsedSource<T>;
      const parsed = parse();
      entries.set(source, { id, parsed });
      return parsed;
    },
  };
}

/** What can't be read is told of by who reads it. */
function bytesOf(path: string): Buffer | undefined {
  try {
    return readFileSync(path);
  } catch {
    return undefined;
  }
}

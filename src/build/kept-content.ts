import { join } from 'node:path';
import { fileHash } from '../content/read/files/file-hash.ts';
import type { KeptFiles } from '../content/read/kept-files.ts';
import type { Source } from '../content/read/source.ts';
import type { SourceRead } from '../content/read/source-text.ts';
import { keepMap, keptMap } from './kept-map.ts';

const NAME = 'content';

/** What a panel's file came to: nothing in it was wrong, and nothing was left to fill in. */
interface KeptPanel {
  /** Of its bytes. */
  hash: string;
  id: string;
  source: Omit<Source, 'lineOf'>;
  data: unknown;
}

/**
 * What panels' files were read to in the build before: of a file whose bytes are the same neither is the YAML parsed again,
 * nor is it held against its schema. Files in which anything was to be told are read every time.
 *
 * @param cache what stays from build to build
 */
export function keptContent(cache: string): KeptFiles & { keep(): void } {
  const file = join(cache, NAME);
  const before = keptMap<KeptPanel>(file);
  const now = new Map<string, KeptPanel>();
  /** Of the sources that were given: under which name they are kept. */
  const known = new Map<Source, { path: string; hash: string; kept?: KeptPanel }>();
  return {
    source(path, shownAs, read) {
      const hash = /[/\\]panels[/\\]/.test(path) ? hashOf(path) : undefined;
      if (hash === undefined) return read();
      const kept = before.get(path);
      if (kept?.hash === hash && kept.source.file === shownAs) {
        const source: Source = { ...kept.source, lineOf: lineFinder(read) };
        known.set(source, { path, hash, kept });
        return { source, problems: [] };
      }
      const result = read();
      if (result.source && !result.source.unfinished && result.problems.length === 0) {
        known.set(result.source, { path, hash });
      }
      return result;
    },
    parsed(id, source, parse) {
      const its = known.get(source);
      if (its?.kept?.id === id) {
        now.set(its.path, its.kept);
        // Kept by the same code, from the same schema.
        return { entry: { id, data: its.kept.data as never, source }, problems: [] };
      }
      const parsed = parse();
      if (its && parsed.entry && parsed.problems.length === 0) {
        const { lineOf: _, ...rest } = source;
        now.set(its.path, { hash: its.hash, id, source: rest, data: parsed.entry.data });
      }
      return parsed;
    },
    keep: () => keepMap(file, now),
  };
}

/** Undefined for what can't be read, which who reads it tells of. */
function hashOf(path: string): string | undefined {
  try {
    // The very hash that stands for the file among the stamps of its panel, worked out once.
    return fileHash(path);
  } catch {
    return undefined;
  }
}

/** Lines are asked for where there is something to tell of a sound file, which is seldom: it is read for them then. */
function lineFinder(read: () => SourceRead): Source['lineOf'] {
  let source: Source | undefined;
  return (path) => {
    source ??= read().source;
    return source?.lineOf(path) ?? 1;
  };
}

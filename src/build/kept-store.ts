import { mkdirSync, readdirSync, readFileSync, rmSync, type Stats, statSync } from 'node:fs';
import { join } from 'node:path';
import { writeWhole } from '../content/read/write-whole.ts';
import { buildStamp } from './source-stamp.ts';

/** A file as it was written: the output is made of links to it, and who writes into that writes here. */
export interface Written {
  /** ms since 1970. */
  changed: number;
  size: number;
}

/** What tells a file from one that somebody has written into. */
export const written = ({ mtimeMs: changed, size }: Pick<Stats, 'mtimeMs' | 'size'>): Written => ({ changed, size });

/** True where a file is there, and nobody has written into it. */
export function isAsWritten(file: string, { changed, size }: Written): boolean {
  const found = statSync(file, { throwIfNoEntry: false });
  return found?.mtimeMs === changed && found.size === size;
}

/**
 * Opens what the same code has kept of one kind: a list, and beside it a folder with the files that it tells of. The list
 * is away until the store is closed, so that a build that was stopped leaves nothing that could be taken for whole.
 *
 * @param kind the folder's name, and the list's
 * @param isFresh what was kept is left aside
 */
export function openStore<T>(cache: string, kind: string, isFresh: boolean) {
  const [list, folder] = [join(cache, `${kind}.json`), join(cache, kind)];
  if (isFresh) for (const it of [list, folder]) rmSync(it, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  const before = listed<T>(list);
  rmSync(list, { force: true });
  return {
    /** What was kept, by its key. */
    before,

    /** Where a file lies. */
    fileOf: (name: string) => join(folder, name),

    /**
     * Keeps what there is now, and no other files.
     *
     * @param names of its files
     * @throws where it can't be written
     */
    close(now: ReadonlyMap<string, T>, names: ReadonlySet<string>): void {
      for (const name of readdirSync(folder)) {
        if (!names.has(name)) rmSync(join(folder, name), { recursive: true });
      }
      writeWhole(list, JSON.stringify({ code: buildStamp(), kept: Object.fromEntries(now) }));
    },
  };
}
export type Store<T> = ReturnType<typeof openStore<T>>;

/** What the same code has listed; nothing where there is no list. */
function listed<T>(list: string): Readonly<Record<string, T>> {
  try {
    const { code, kept } = JSON.parse(readFileSync(list, 'utf8'));
    return code === buildStamp() ? kept : {};
  } catch {
    // There is none yet, or it was cut off.
    return {};
  }
}

import { readFileSync } from 'node:fs';
import { deserialize, serialize } from 'node:v8';
import { writeWhole } from '../content/read/write-whole.ts';
import { buildStamp } from './source-stamp.ts';

/** What the same code has kept in a file; nothing where there is none. */
export function keptMap<T>(file: string): ReadonlyMap<string, T> {
  try {
    const { code, entries } = deserialize(readFileSync(file));
    if (code === buildStamp() && entries instanceof Map) return entries;
  } catch {
    // There is none yet, or another version of Node wrote it.
  }
  return new Map();
}

/** Keeps it for the next build, which works it out again where a folder can't be written to: no reason to fail. */
export function keepMap(file: string, entries: ReadonlyMap<string, unknown>): void {
  try {
    writeWhole(file, serialize({ code: buildStamp(), entries }));
  } catch {
    // Said above.
  }
}

import { readFileSync } from 'node:fs';
import { writeWhole } from '../content/read/write-whole.ts';
import { buildStamp } from './source-stamp.ts';

/** What the same code has listed in a file; nothing where there is none. */
export function keptList<T>(file: string): Record<string, T> {
  try {
    const { code, kept } = JSON.parse(readFileSync(file, 'utf8'));
    return code === buildStamp() ? kept : {};
  } catch {
    // There is none yet, or it was cut off.
    return {};
  }
}

/** @throws where it can't be written */
export function keepList(file: string, kept: Readonly<Record<string, unknown>>): void {
  writeWhole(file, JSON.stringify({ code: buildStamp(), kept }));
}

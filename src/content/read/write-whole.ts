import { mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { threadId } from 'node:worker_threads';

/**
 * Writes a file beside its place and gives it its name when it is whole: whoever reads it, or is stopped, never meets a
 * half of it.
 *
 * @param data what is in it, or what writes it to the path that it is given
 * @throws where it can't be written
 */
export function writeWhole(file: string, data: string | Uint8Array | ((draft: string) => void)): void {
  mkdirSync(dirname(file), { recursive: true });
  // Another process or thread may be writing the same file.
  const draft = `${file}.${process.pid}-${threadId}`;
  try {
    if (typeof data === 'function') data(draft);
    else writeFileSync(draft, data);
    renameSync(draft, file);
  } catch (error) {
    rmSync(draft, { force: true });
    throw error;
  }
}

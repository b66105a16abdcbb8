import { createHash } from 'node:crypto';
import { closeSync, openSync, readSync, statSync } from 'node:fs';

const CHUNK = 1024 * 1024;

let chunk: Buffer | undefined;

/** Hashes of this process, each with what stands for the file's state: large files are not read again for it. */
const known = new Map<string, { state: string; sha256: string }>();

/** SHA-256 of a file's bytes in hexadecimal digits; of one that has not changed since it was asked for, as before. */
export function fileHash(path: string): string {
  const { size, mtimeNs, ino } = statSync(path, { bigint: true });
  const state = `${size} ${mtimeNs} ${ino}`;
  const before = known.get(path);
  if (before?.state === state) return before.sha256;
  const sha256 = freshHash(path);
  known.set(path, { state, sha256 });
  return sha256;
}

/** The same, of what is in the file now, read piece by piece. */
export function freshHash(path: string): string {
  const hash = createHash('sha256');
  // One for all files: a new one for each of a thousand keeps the collector at work.
  chunk ??= Buffer.allocUnsafe(CHUNK);
  const bytes = chunk;
  const file = openSync(path, 'r');
  try {
    for (let length = readSync(file, bytes); length > 0; length = readSync(file, bytes)) {
      hash.update(bytes.subarray(0, length));
    }
  } finally {
    closeSync(file);
  }
  return hash.digest('hex');
}

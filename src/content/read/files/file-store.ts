import { createHash, randomUUID } from 'node:crypto';
import { globSync, rmSync, statSync, utimesSync } from 'node:fs';
import { join } from 'node:path';
import type { FileEntry } from '../../schema/files/file-entry.ts';
import { cacheFolder } from '../cache-folder.ts';
import { codeHash } from '../code-hash.ts';
import { writeWhole } from '../write-whole.ts';
import type { BenchFileData, BenchFileKind, FileRead } from './file-kind.ts';
import { readKept, writeKept } from './kept-reading.ts';
import { RecentReadings } from './recent-readings.ts';

/*
 * What files were read to, by a hash of the file, of what the session says of it, and of the code that reads: a large log
 * or photo is read once. What comes from here is the same as what is read anew.
 */
const store = () => join(cacheFolder(), 'bench-files');

/** ms of reading from which a result is kept on the disk. */
const SLOW = 30;

/** Days after which what nobody has asked for is let go. */
const KEPT_DAYS = 60;
const DAY = 86_400_000;

type AnyRead = FileRead<BenchFileData[BenchFileKind]>;

/** Results of this process; a ledger is worked out from the same files again and again while the tester writes. */
const recent = new RecentReadings<AnyRead>(96 << 20);

/** Everything that reading may run, and the libraries, by their versions. */
const CODE = ['src/content/read/files', 'src/content/schema', 'src/measure', 'package.json'];

let code: string | undefined;

/** Stands for the code of this process. Where it can't be read, for this process alone. */
function codeOfReading(): string {
  code ??= codeHash(CODE) ?? randomUUID();
  return code;
}

/** What stands for a reading. */
export function readingKey(sha256: string, kind: string, entry: FileEntry): string {
  return createHash('sha256')
    .update([sha256, kind, JSON.stringify({ ...entry, file: '' }), codeOfReading()].join('\n'))
    .digest('hex');
}

/** What a reading came to before, or comes to now. */
export function storedReading(key: string, read: () => AnyRead): AnyRead {
  const known = recent.get(key) ?? fromDisk(key);
  const result = known ?? timed(key, read);
  recent.set(key, result);
  return result;
}

function timed(key: string, read: () => AnyRead): AnyRead {
  const start = performance.now();
  const result = read();
  if (performance.now() - start > SLOW && 'data' in result) toDisk(key, result);
  return result;
}

function fromDisk(key: string): AnyRead | undefined {
  try {
    const path = join(store(), key);
    const found = readKept(path);
    const now = new Date();
    utimesSync(path, now, now);
    return typeof found === 'object' && found !== null && 'data' in found ? (found as AnyRead) : undefined;
  } catch {
    // There is none, or another version of Node wrote it.
    return undefined;
  }
}

function toDisk(key: string, result: AnyRead): void {
  try {
    writeWhole(join(store(), key), (draft) => writeKept(draft, result));
    for (const name of globSync('*', { cwd: store() })) {
      const path = join(store(), name);
      if (Date.now() - statSync(path).mtimeMs > KEPT_DAYS * DAY) rmSync(path, { force: true });
    }
  } catch {
    // It is read again the next time.
  }
}

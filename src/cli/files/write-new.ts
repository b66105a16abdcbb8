import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { UsageError } from '../../content/read/usage-error.ts';

/**
 * Writes files that are not there yet. Nothing is ever written over: where one of them is there, none is written.
 *
 * @param files their texts by their paths below the folder
 * @throws UsageError with those that are there
 */
export function writeNew(folder: string, files: ReadonlyMap<string, string>): void {
  const there = [...files.keys()].filter((path) => existsSync(join(folder, path)));
  if (there.length > 0) {
    throw new UsageError(
      `Nothing was written: ${there.map((it) => join(folder, it)).join(', ')} ${there.length === 1 ? 'is' : 'are'} there already.`,
    );
  }
  for (const [path, text] of files) {
    const file = join(folder, path);
    mkdirSync(dirname(file), { recursive: true });
    // Fails rather than write over what has come since.
    writeFileSync(file, text, { flag: 'wx' });
  }
}

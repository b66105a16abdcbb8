import { globSync, rmSync, statSync, utimesSync } from 'node:fs';
import { join } from 'node:path';

/** Days after which what no build has used is let go. */
const KEPT_DAYS = 60;
const DAY = 86_400_000;

/**
 * Notes that something of a store is used, by its time of access: that of writing may say whether it is as it was made. No
 * more often than once a day, since it is asked for after weeks.
 */
export function noteUse(file: string): void {
  const { atimeMs, mtimeMs } = statSync(file);
  if (Date.now() - atimeMs > DAY) utimesSync(file, Date.now() / 1000, mtimeMs / 1000);
}

/** Takes out of a store what no build has used for long, by what `noteUse` has noted. */
export function forgetOld(store: string): void {
  for (const name of globSync('*', { cwd: store })) {
    const path = join(store, name);
    const { atimeMs } = statSync(path, { throwIfNoEntry: false }) ?? { atimeMs: Date.now() };
    if (Date.now() - atimeMs > KEPT_DAYS * DAY) rmSync(path, { force: true });
  }
}

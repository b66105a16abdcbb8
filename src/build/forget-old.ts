import { globSync } from 'node:fs';
import { rm, stat } from 'node:fs/promises';
import { join } from 'node:path';

/** Days after which what no build has used is let go. */
const KEPT_DAYS = 60;
const DAY = 86_400_000;

/** Takes out of a store what no build has used for long; what is used has its day renewed. */
export async function forgetOld(store: string): Promise<void> {
  for (const name of globSync('*', { cwd: store })) {
    const path = join(store, name);
    const { mtimeMs } = await stat(path);
    if (Date.now() - mtimeMs > KEPT_DAYS * DAY) await rm(path, { force: true });
  }
}

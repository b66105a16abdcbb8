import { globSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** Days after which what no build has used is let go. */
const KEPT_DAYS = 60;
const DAY = 86_400_000;

/** Takes out of a store what no build has used for long; what is used has its time of access renewed. */
export function forgetOld(store: string): void {
  for (const name of globSync('*', { cwd: store })) {
    const path = join(store, name);
    const { atimeMs } = statSync(path, { throwIfNoEntry: false }) ?? { atimeMs: Date.now() };
    if (Date.now() - atimeMs > KEPT_DAYS * DAY) rmSync(path, { force: true });
  }
}

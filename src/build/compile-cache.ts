import { readdirSync, rmSync } from 'node:fs';
import { enableCompileCache } from 'node:module';
import { join, resolve } from 'node:path';
import { cacheFolder } from '../content/read/cache-folder.ts';

/** Compiled modules that may pile up: a first build leaves about 2,000, and each one after it what has changed. */
const MOST = 8000;

/**
 * Has Node keep what it has compiled, and stripped of types, for the next command: a quarter of what `check` takes, a tenth
 * of a build. Node keeps it under the file’s place, its content and the own version, and writes it when it ends. Where the
 * folder can't be written, nothing is kept.
 */
export function keepCompiled(): void {
  const folder = resolve(cacheFolder(), 'compiled');
  clearPiled(folder, MOST);
  // By the place beside the folder, so that a guide that has moved, or a copy of it, need not begin anew.
  enableCompileCache({ directory: folder, portable: true });
}

/** Takes the folder away where it holds too much: nobody else clears it of code that is no more, such as former pages'. */
export function clearPiled(folder: string, most: number): void {
  try {
    const kept = readdirSync(folder).reduce((sum, it) => sum + readdirSync(join(folder, it)).length, 0);
    if (kept > most) rmSync(folder, { recursive: true, force: true });
  } catch {
    // There is none yet, or another command is clearing it.
  }
}

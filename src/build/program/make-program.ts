import { spawn } from 'node:child_process';
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { productFolder } from '../../content/read/product-folder.ts';
import type { Loaded } from '../../ledger/load-ledger.ts';
import { draftOf, keepProgram, keptProgram, type Program } from './kept-programs.ts';
import { compiledNotes, type ProgramOrder } from './program-order.ts';

/**
 * Has Astro make the program that renders pages, in a process of its own: the bundler's memory goes with it.
 *
 * @param key its name
 * @param base path of the guide on its host
 * @returns undefined where it can't be made; Astro's own build tells why
 */
export async function makeProgram(loaded: Loaded, key: string, base: string): Promise<Program | undefined> {
  let draft: string | undefined;
  try {
    draft = draftOf(key);
    await made({ draft, base, notes: compiledNotes(loaded) });
    keepProgram(draft, key);
    return keptProgram(key);
  } catch {
    if (draft) rmSync(draft, { recursive: true, force: true });
    return undefined;
  }
}

/** Started as this process was: with what makes Node read TypeScript among packages, and with little memory. */
function made(order: ProgramOrder): Promise<void> {
  const script = join(productFolder(), 'src', 'build', 'program', 'program-maker.ts');
  const child = spawn(process.execPath, [...process.execArgv, script], { stdio: ['pipe', 'ignore', 'ignore'] });
  const stop = () => child.kill('SIGKILL');
  process.once('exit', stop);
  return new Promise<void>((resolve, reject) => {
    child.on('error', reject);
    child.stdin.on('error', reject);
    child.on('close', (code) => (code === 0 ? resolve() : reject(new Error(`it ended with ${code}`))));
    child.stdin.end(JSON.stringify(order));
  }).finally(() => process.off('exit', stop));
}

import { existsSync, renameSync, rmSync } from 'node:fs';
import { cp } from 'node:fs/promises';
import { errorCode } from './error-code.ts';

/**
 * Puts a finished folder in the place of another. Renames only, so that a reader of the target sees the old or
 * the new one, never a half; where the second rename fails, the old one is put back. A target on another disk, to which
 * nothing can be renamed, gets a copy beside it first.
 */
export async function replaceFolder(finished: string, target: string): Promise<void> {
  const [from, to] = [trim(finished), trim(target)];
  const [aside, beside] = [`${to}.old`, `${to}.new`];
  // What a build that was stopped has left.
  for (const left of [aside, beside]) rmSync(left, { recursive: true, force: true });
  const hadOne = existsSync(to);
  if (hadOne) renameSync(to, aside);
  try {
    renameSync(from, to);
  } catch (error) {
    if (hadOne) renameSync(aside, to);
    if (errorCode(error) !== 'EXDEV') throw error;
    await copyInPlace(from, { to, aside, beside, hadOne });
  }
  rmSync(aside, { recursive: true, force: true });
}

/** The same from another disk: the copy takes its time while the old one stands, and its place in two renames. */
async function copyInPlace(
  from: string,
  { to, aside, beside, hadOne }: { to: string; aside: string; beside: string; hadOne: boolean },
): Promise<void> {
  try {
    await cp(from, beside, { recursive: true });
    if (hadOne) renameSync(to, aside);
    try {
      renameSync(beside, to);
    } catch (error) {
      if (hadOne) renameSync(aside, to);
      throw error;
    }
  } catch (error) {
    rmSync(beside, { recursive: true, force: true });
    throw error;
  }
  rmSync(from, { recursive: true, force: true });
}

function trim(path: string): string {
  return path.replace(/\/+$/, '');
}

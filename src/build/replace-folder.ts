import { existsSync, renameSync } from 'node:fs';
import { rm } from 'node:fs/promises';

/**
 * Puts a finished folder in the place of another. Renames only, so that a reader of the target sees the old or
 * the new one, never a half; where the second rename fails, the old one is put back.
 */
export async function replaceFolder(finished: string, target: string): Promise<void> {
  const [from, to] = [trim(finished), trim(target)];
  const aside = `${to}.old`;
  await rm(aside, { recursive: true, force: true });
  const hadOne = existsSync(to);
  if (hadOne) renameSync(to, aside);
  try {
    renameSync(from, to);
  } catch (error) {
    if (hadOne) renameSync(aside, to);
    throw error;
  }
  await rm(aside, { recursive: true, force: true });
}

function trim(path: string): string {
  return path.replace(/\/+$/, '');
}

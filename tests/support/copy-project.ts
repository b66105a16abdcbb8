import { cpSync, mkdtempSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const PROJECT = fileURLToPath(new URL('../..', import.meta.url));

/** A copy of all that a build needs but the content, for builds that must not meet those of this checkout. */
export function copyProject(name: string): string {
  const root = mkdtempSync(join(tmpdir(), `${name}-`));
  for (const part of ['src', 'public', 'astro.config.mjs', 'package.json', 'package-lock.json', 'tsconfig.json']) {
    cpSync(join(PROJECT, part), join(root, part), { recursive: true });
  }
  symlinkSync(join(PROJECT, 'node_modules'), join(root, 'node_modules'));
  return root;
}

import { createHash } from 'node:crypto';
import { existsSync, globSync, readFileSync, statSync } from 'node:fs';

/** What pages are made with, besides the content. */
const SOURCES = [
  'src/**/*',
  'public/**/*',
  'astro.config.mjs',
  'astro.project.mjs',
  'package.json',
  'package-lock.json',
  'node_modules/.package-lock.json',
  'tsconfig.json',
];

/** Stands for all code, styles and libraries: another one, and nothing that was built before can be kept. */
export function sourceStamp(): string {
  const hash = createHash('sha256').update(process.version);
  for (const path of globSync(SOURCES).toSorted()) {
    if (existsSync(path) && statSync(path).isFile()) hash.update(`${path}\n`).update(readFileSync(path));
  }
  return hash.digest('base64url');
}

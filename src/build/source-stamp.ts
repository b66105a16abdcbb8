import { createHash } from 'node:crypto';
import { existsSync, globSync, readFileSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { productFolder } from '../content/read/product-folder.ts';

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

/** Of those, what a guide in a folder of its own has besides: which libraries are there. */
const OF_GUIDE = ['package-lock.json', 'node_modules/.package-lock.json'];

/** Stands for all code, styles and libraries: another one, and nothing that was built before can be kept. */
export function sourceStamp(): string {
  const hash = createHash('sha256').update(process.version);
  const isApart = resolve('.') !== productFolder();
  for (const [folder, patterns] of [
    [productFolder(), SOURCES] as const,
    ...(isApart ? [['.', OF_GUIDE] as const] : []),
  ]) {
    for (const path of globSync(patterns, { cwd: folder }).toSorted()) {
      const file = join(folder, path);
      if (existsSync(file) && statSync(file).isFile()) hash.update(`${path}\n`).update(readFileSync(file));
    }
  }
  return hash.digest('base64url');
}

let ofBuild: string | undefined;

/** The same, worked out once: while a build is at work the code is what it started with. */
export function buildStamp(): string {
  ofBuild ??= sourceStamp();
  return ofBuild;
}

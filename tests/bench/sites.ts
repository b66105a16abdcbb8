import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { PROJECT, scratchFolder } from './scratch.ts';

/** A site that can be built: in which folder, by which script with which arguments. */
export interface Site {
  folder: string;
  command: readonly string[];
}

/** Where a build puts its pages. */
export const PAGES = 'dist';
/** Everything else that a build leaves behind and the next one could use. */
export const LEFTOVERS = ['.astro', '.build', '.cache'];

/**
 * By default Astro's and Vite's caches lie in node_modules, which is linked here and must stay as it is. Vite's
 * holds ready-made modules of the development server and outlives builds; Astro's is cleared before each.
 */
const CACHES = "cacheDir: './.cache/', vite: { ...project.vite, cacheDir: './.vite/' }";

/** The project without its content. Copied once, so that edits during a run change nothing. */
let frozen: string | undefined;
function frozenProject(): string {
  if (frozen) return frozen;
  frozen = scratchFolder('project');
  for (const name of ['src', 'public', 'tsconfig.json', 'package.json']) {
    cpSync(join(PROJECT, name), join(frozen, name), { recursive: true });
  }
  cpSync(join(PROJECT, 'astro.config.mjs'), join(frozen, 'astro.project.mjs'));
  write(join(frozen, 'astro.config.mjs'), [
    "import project from './astro.project.mjs';",
    `export default { ...project, ${CACHES} };`,
  ]);
  return frozen;
}

/** The guide, in a copy of its own. */
export function ourSite(): Site {
  const folder = scratchFolder('ours');
  cpSync(frozenProject(), folder, { recursive: true });
  linkModules(folder);
  // The very line of `npm run build`, less the "node".
  return { folder, command: buildScript().split(' ').slice(1) };
}

/**
 * The yardstick: a site of Astro alone that writes trivial pages from the same panel files, without schemas,
 * styles, scripts or a search index.
 *
 * @param pagesEach 1: a page with heading and body for each file; 2: another one with the heading alone
 */
export function bareSite(pagesEach: 1 | 2): Site {
  const folder = scratchFolder('bare');
  linkModules(folder);
  write(join(folder, 'package.json'), ['{ "type": "module", "private": true }']);
  write(join(folder, 'astro.config.mjs'), ['const project = {};', `export default { ${CACHES} };`]);
  write(join(folder, 'build.mjs'), ["import { build } from 'astro';", "await build({ logLevel: 'warn' });"]);
  write(join(folder, 'src/content.config.ts'), [
    "import { defineCollection } from 'astro:content';",
    "import { glob } from 'astro/loaders';",
    "const generateId = ({ entry }) => entry.split('/').at(-2);",
    "const loader = glob({ pattern: 'panels/*/index.md', base: process.env.LEDGER_CONTENT, generateId });",
    'export const collections = { panels: defineCollection({ loader }) };',
  ]);
  write(join(folder, 'src/pages/panels/[slug]/index.astro'), trivialPage('<Content />'));
  if (pagesEach === 2) write(join(folder, 'src/pages/panels/[slug]/second.astro'), trivialPage(''));
  return { folder, command: ['build.mjs'] };
}

function trivialPage(body: string): string[] {
  return [
    '---',
    "import { getCollection, render } from 'astro:content';",
    'export async function getStaticPaths() {',
    "  return (await getCollection('panels')).map((entry) => ({ params: { slug: entry.id }, props: { entry } }));",
    '}',
    'const { entry } = Astro.props;',
    ...(body ? ['const { Content } = await render(entry);'] : []),
    '---',
    '<!doctype html>',
    '<html lang="en">',
    '  <head><meta charset="utf-8" /><title>{entry.data.model}</title></head>',
    `  <body><h1>{entry.data.model}</h1>${body}</body>`,
    '</html>',
  ];
}

/** How many pages a built site has. */
export function pageCount({ folder }: Site): number {
  const pages = join(folder, PAGES);
  if (!existsSync(pages)) return 0;
  return readdirSync(pages, { recursive: true, encoding: 'utf8' }).filter((it) => it.endsWith('.html')).length;
}

function linkModules(folder: string): void {
  symlinkSync(join(PROJECT, 'node_modules'), join(folder, 'node_modules'));
}

function write(path: string, lines: readonly string[]): void {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, `${lines.join('\n')}\n`);
}

function buildScript(): string {
  const { scripts } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'));
  return scripts.build;
}

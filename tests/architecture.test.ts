import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { codeOfAstro, domFaults, importFaults, importsOf, LAYERS, purityFaults } from './architecture-scan.ts';

const top = new URL('../', import.meta.url);

/** Every file of src/ with code in it: path from the repository's top, and the code. */
const FILES = readdirSync(new URL('src/', top), { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && /\.(ts|tsx|mts|js|mjs|astro)$/.test(entry.name))
  .map((entry) => {
    const file = `${entry.parentPath}/${entry.name}`.replaceAll('\\', '/').replace(/^.*?\/src\//, 'src/');
    const text = readFileSync(new URL(file, top), 'utf8');
    return { file, source: file.endsWith('.astro') ? codeOfAstro(text) : text };
  });

describe('the project', () => {
  test.each(['measure', 'schema', 'ledger'])('has files in src/%s to look at', (layer) => {
    expect(FILES.filter(({ file }) => file.startsWith(`src/${layer}/`)).length).toBeGreaterThan(5);
  });

  test.each(Object.entries(LAYERS))('src/%s imports from its own and lower layers only', (layer) => {
    const files = FILES.filter(({ file }) => file.startsWith(`src/${layer}/`));
    expect(files.flatMap(({ file, source }) => importFaults(file, source))).toEqual([]);
  });

  test('src/measure reads no clock, draws nothing without a seed and has no input or output', () => {
    expect(FILES.flatMap(({ file, source }) => purityFaults(file, source))).toEqual([]);
  });

  test('only src/client uses the page’s DOM', () => {
    expect(FILES.flatMap(({ file, source }) => domFaults(file, source))).toEqual([]);
  });
});

describe('finding imports', () => {
  test.each([
    ["import { a } from './a.ts';", './a.ts', false],
    ["import a, * as b from './a.ts';", './a.ts', false],
    ["import './a.ts';", './a.ts', false],
    ["import type { A } from './a.ts';", './a.ts', true],
    ["import { type A, type B } from './a.ts';", './a.ts', true],
    ["import { type A, b } from './a.ts';", './a.ts', false],
    ["export * from './a.ts';", './a.ts', false],
    ["export type { A } from './a.ts';", './a.ts', true],
    ["const a = await import('./a.ts');", './a.ts', false],
    ['const a = await import(`./a.ts`);', './a.ts', false],
    ["type A = import('./a.ts').A;", './a.ts', true],
    ["const a = require('./a.ts');", './a.ts', false],
    ['const a = await import(name);', null, false],
    ["const a = await import('./' + name);", null, false],
  ])('%s', (source, specifier, typeOnly) => {
    expect(importsOf(`\n${source}`)).toEqual([{ specifier, typeOnly, line: 2 }]);
  });

  test('imports over several lines, several imports in a line', () => {
    const source = "import {\n  a,\n  b,\n} from './a.ts';\nimport './b.ts'; export { c } from './c.ts';";
    expect(importsOf(source).map((it) => [it.specifier, it.line])).toEqual([
      ['./a.ts', 1],
      ['./b.ts', 5],
      ['./c.ts', 5],
    ]);
  });

  test('comments, texts and exports of one’s own are no imports', () => {
    const source = `// import './a.ts';
      /* import('./b.ts') */
      const text = "import './c.ts'";
      export { text };
      export const from = './d.ts';`;
    expect(importsOf(source)).toEqual([]);
  });
});

describe('holding imports against the layers', () => {
  test.each([
    ['src/measure/a.ts', "import '../schema/units.ts';"],
    ['src/measure/a.ts', "import type { Panel } from '../schema/panel.ts';"],
    ['src/measure/plausibility/a.ts', "import '../../ledger/a.ts';"],
    ['src/measure/a.ts', "import '../../tests/references/grid.ts';"],
    ['src/measure/a.ts', "import '../content.config.ts';"],
    ['src/measure/a.ts', "import 'node:fs';"],
    ['src/measure/a.ts', "import { readFile } from 'fs/promises';"],
    ['src/measure/a.ts', "import 'astro:content';"],
    ['src/measure/a.ts', "export const a = () => import('../client/sort.ts');"],
    ['src/measure/a.ts', 'export const a = (name: string) => import(name);'],
    ['src/measure/a.ts', "import '/src/schema/units.ts';"],
    ['src/measure/a.ts', "import '@/schema/units.ts';"],
    ['src/schema/a.ts', "import '../ledger/a.ts';"],
    ['src/schema/a.ts', "import { z } from 'astro/zod';"],
    ['src/ledger/a.ts', "import '../present/a.ts';"],
    ['src/ledger/a.ts', "import '../pages/a.ts';"],
    ['src/ledger/a.ts', "import '../components/a.ts';"],
    ['src/ledger/a.ts', "import '../layouts/a.ts';"],
    ['src/ledger/a.ts', "import '../cli/a.ts';"],
    ['src/ledger/a.ts', "import { getCollection } from 'astro:content';"],
    ['src/ledger/a.ts', "import mdx from '@astrojs/mdx';"],
    ['src/ledger/a.ts', "import type { Loader } from 'astro';"],
    ['src/present/a.ts', "import '../client/a.ts';"],
  ])('%s may not have: %s', (file, source) => {
    expect(importFaults(file, source)).toHaveLength(1);
    expect(importFaults(file, source)[0]).toMatch(new RegExp(`^${file}:1 `));
  });

  test.each([
    ['src/measure/a.ts', "import { b } from './b.ts'; import { mean } from 'simple-statistics';"],
    ['src/measure/plausibility/a.ts', "import type { Figure } from '../figure.ts';"],
    ['src/schema/a.ts', "import { z } from 'zod'; import '../measure/figure.ts'; import './units.ts';"],
    ['src/ledger/a.ts', "import '../schema/panel.ts'; import '../measure/grid.ts'; import 'node:fs';"],
    ['src/present/a.ts', "import type { Ledger } from '../ledger/ledger.ts'; import '../measure/figure.ts';"],
    ['src/present/a.ts', "import { type Ledger } from '../ledger/ledger.ts'; import '../schema/guide.ts';"],
    ['src/pages/index.astro', "import '../ledger/ledger.ts'; import 'astro:content';"],
    ['src/client/sort.ts', "import '../measure/figure.ts';"],
    ['src/content.config.ts', "import 'astro:content'; import './ledger/collections.ts';"],
    ['src/measure/a.ts', "import 'astronomy';"],
  ])('%s may have: %s', (file, source) => {
    expect(importFaults(file, source)).toEqual([]);
  });
});

describe('finding uses of the DOM', () => {
  test.each([
    "document.querySelector('table');",
    'const wide = window.innerWidth;',
    'globalThis.document.title;',
    'const a = (it: HTMLTableRowElement) => it.cells;',
    'new IntersectionObserver(() => {});',
    'export const a = { location };',
    'function a() { return localStorage; }',
    'if (typeof document === "undefined") run();',
  ])('%s', (source) => {
    expect(domFaults('src/ledger/a.ts', source)).toHaveLength(1);
    expect(domFaults('src/client/a.ts', source)).toEqual([]);
  });

  test.each([
    "import { parseDocument } from 'yaml'; const document = parseDocument(text); document.errors;",
    "import type { Node } from 'yaml'; export const a = (it: Node) => it;",
    'const { history } = panel; history.length;',
    'const { document: text } = panel; text.length;',
    'function a(location: string) { return location; }',
    'panel.document.errors; const it = { window: 1 }; interface A { history: string }',
    '// document.title\nconst text = "window";',
  ])('%s is none', (source) => {
    expect(domFaults('src/ledger/a.ts', source)).toEqual([]);
  });

  test('in the scripts and the front matter of an .astro file, not in its words', () => {
    const page = (frontMatter: string, script: string) =>
      codeOfAstro(`---\n${frontMatter}\n---\n<p>This document and its history</p>\n<script>${script}</script>\n`);
    expect(domFaults('src/pages/a.astro', page('const a = 1;', "import '../client/sort.ts';"))).toEqual([]);
    expect(domFaults('src/pages/a.astro', page('const a = 1;', 'document.title = "a";'))).toHaveLength(1);
    expect(domFaults('src/pages/a.astro', page('const a = document.title;', ''))).toHaveLength(1);
    expect(codeOfAstro('<script type="application/ld+json">{"document": 1}</script>')).not.toContain('document');
  });
});

describe('finding what is not pure', () => {
  test.each([
    'const now = Date.now();',
    'const today = new Date();',
    'const today = new Date;',
    'const start = performance.now();',
    'const x = Math.random();',
    'const home = process.env.HOME;',
    "const a = fetch('https://meters.example');",
  ])('%s', (source) => {
    expect(purityFaults('src/measure/a.ts', source)).toHaveLength(1);
    expect(purityFaults('src/cli/a.ts', source)).toEqual([]);
  });

  test.each(["const day = new Date('2026-03-02');", 'const x = Math.max(1, 2);', '// Math.random()'])(
    '%s is pure',
    (source) => {
      expect(purityFaults('src/measure/a.ts', source)).toEqual([]);
    },
  );
});

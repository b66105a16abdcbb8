import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  AT_BENCH,
  codeOfAstro,
  domFaults,
  importCircles,
  importFaults,
  importsOf,
  LAYERS,
  purityFaults,
  waysToNode,
} from './architecture-scan.ts';

const top = new URL('../', import.meta.url);

/** Files of src/ whose names fit, from the repository's top, with their text. */
function sourceFiles(name: RegExp): Array<{ file: string; text: string }> {
  return readdirSync(new URL('src/', top), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && name.test(entry.name))
    .map((entry) => {
      const file = `${entry.parentPath}/${entry.name}`.replaceAll('\\', '/').replace(/^.*?\/src\//, 'src/');
      return { file, text: readFileSync(new URL(file, top), 'utf8') };
    });
}

/** Every file of src/ with code in it: path from the repository's top, and the code. */
const FILES = sourceFiles(/\.(ts|tsx|mts|js|mjs|astro)$/).map(({ file, text }) => ({
  file,
  source: file.endsWith('.astro') ? codeOfAstro(text) : text,
}));

describe('the project', () => {
  test.each(Object.keys(LAYERS).filter((it) => it !== 'browser'))('has files in src/%s to look at', (layer) => {
    expect(FILES.filter(({ file }) => file.startsWith(`src/${layer}/`)).length).toBeGreaterThan(5);
  });

  test('every file imports from its own and lower layers only', () => {
    expect(FILES.flatMap(({ file, source }) => importFaults(file, source))).toEqual([]);
  });

  test('no file imports itself by way of others', () => {
    expect(importCircles(FILES)).toEqual([]);
  });

  test('the bench’s scripts reach nothing that a browser has not, by whatever way', () => {
    const scripts = FILES.map((it) => it.file).filter((it) => it.startsWith(AT_BENCH));
    expect(scripts.length).toBeGreaterThan(5);
    expect(waysToNode(FILES, scripts)).toEqual([]);
  });

  test('no file is longer than 300 lines', () => {
    const long = sourceFiles(/\.(ts|astro|mjs|css)$/).filter(({ text }) => text.split('\n').length > 301);
    expect(long.map(({ file }) => file)).toEqual([]);
  });

  test('src/measure reads no clock, draws nothing without a seed and has no input or output', () => {
    expect(FILES.flatMap(({ file, source }) => purityFaults(file, source))).toEqual([]);
  });

  test('only browser folders use the page’s DOM', () => {
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
    ['src/measure/a.ts', "import '../content/schema/units.ts';"],
    ['src/measure/a.ts', "import type { Panel } from '../content/schema/panel.ts';"],
    ['src/measure/checks/a.ts', "import '../../ledger/a.ts';"],
    ['src/measure/a.ts', "import '../words/format.ts';"],
    ['src/measure/a.ts', "import '../../tests/references/grid.ts';"],
    ['src/measure/a.ts', "import '../content.config.ts';"],
    ['src/measure/a.ts', "import 'node:fs';"],
    ['src/measure/a.ts', "import { readFile } from 'fs/promises';"],
    ['src/measure/a.ts', "import 'astro:content';"],
    ['src/measure/a.ts', "export const a = () => import('../site/guide/browser/sort.ts');"],
    ['src/measure/a.ts', 'export const a = (name: string) => import(name);'],
    ['src/measure/a.ts', "import '/src/content/schema/units.ts';"],
    ['src/measure/a.ts', "import '@/content/schema/units.ts';"],
    ['src/content/rules/a.ts', "import '../../ledger/a.ts';"],
    ['src/content/schema/a.ts', "import { z } from 'astro/zod';"],
    ['src/ledger/a.ts', "import '../site/guide/a.ts';"],
    ['src/ledger/a.ts', "import '../words/a.ts';"],
    ['src/ledger/a.ts', "import '../pages/a.ts';"],
    ['src/ledger/a.ts', "import '../layouts/a.ts';"],
    ['src/ledger/a.ts', "import '../cli/a.ts';"],
    ['src/ledger/a.ts', "import { getCollection } from 'astro:content';"],
    ['src/ledger/a.ts', "import mdx from '@astrojs/mdx';"],
    ['src/ledger/a.ts', "import type { Loader } from 'astro';"],
    ['src/words/a.ts', "import type { Ledger } from '../ledger/ledger.ts';"],
    ['src/words/a.ts', "import '../site/shared/a.ts';"],
    ['src/site/guide/a.ts', "import '../../build/a.ts';"],
    ['src/site/guide/browser/a.ts', "import type { Ledger } from '../../../ledger/ledger.ts';"],
    ['src/site/guide/browser/a.ts', "import '../../../content/schema/units.ts';"],
    ['src/site/guide/browser/a.ts', "import '../guide-view.ts';"],
    ['src/site/bench/browser/a.ts', "import '../../../cli/a.ts';"],
    ['src/site/bench/browser/a.ts', "import '../sheet-view.ts';"],
    ['src/site/guide/browser/a.ts', "import '../../plan/browser/a.ts';"],
    ['src/site/shared/browser/a.ts', "import '../../plan/browser/a.ts';"],
    ['src/site/guide/browser/a.ts', "import 'node:fs';"],
  ])('%s may not have: %s', (file, source) => {
    expect(importFaults(file, source)).toHaveLength(1);
    expect(importFaults(file, source)[0]).toMatch(new RegExp(`^${file}:1 `));
  });

  test.each([
    ['src/measure/a.ts', "import { b } from './b.ts'; import { mean } from 'simple-statistics';"],
    ['src/measure/checks/a.ts', "import type { Figure } from '../figure.ts';"],
    ['src/content/schema/a.ts', "import { z } from 'zod'; import '../../measure/figure.ts'; import './units.ts';"],
    [
      'src/ledger/a.ts',
      "import '../content/schema/panel.ts'; import '../measure/irradiance/grid.ts'; import 'node:fs';",
    ],
    ['src/words/a.ts', "import type { Unit } from '../content/schema/units.ts'; import '../measure/figure.ts';"],
    ['src/site/guide/a.ts', "import type { Ledger } from '../../ledger/ledger.ts'; import './browser/a.ts';"],
    ['src/site/guide/components/A.astro', "import B from '../../shared/components/B.astro'; import 'astro:content';"],
    ['src/site/guide/browser/a.ts', "import '../../../measure/figure.ts'; import '../../shared/browser/dom.ts';"],
    ['src/site/guide/browser/a.ts', "import '../../../words/format.ts'; import './b.ts';"],
    ['src/site/bench/browser/a.ts', "import '../../../content/schema/quantity.ts'; import '../../../ledger/a.ts';"],
    ['src/pages/index.astro', "import '../ledger/ledger.ts'; import 'astro:content';"],
    ['src/content.config.ts', "import 'astro:content'; import './content/schema/collections.ts';"],
    ['src/measure/a.ts', "import 'astronomy';"],
  ])('%s may have: %s', (file, source) => {
    expect(importFaults(file, source)).toEqual([]);
  });

  test('circles, of types too, and none where two files meet in a third', () => {
    const of = (imports: Record<string, string>) =>
      importCircles(Object.entries(imports).map(([file, source]) => ({ file: `src/${file}`, source })));
    expect(of({ 'a.ts': "import './b/b.ts';", 'b/b.ts': "import type { A } from '../a.ts';" })).toEqual([
      'src/a.ts > src/b/b.ts > src/a.ts',
    ]);
    expect(of({ 'a.ts': "import './b.ts'; import './c.ts';", 'b.ts': "import './c.ts';", 'c.ts': '' })).toEqual([]);
  });
});

test('a way to Node is found through other files, and none through types', () => {
  const files = [
    { file: 'src/a.ts', source: "import { b } from './b.ts'; import type { c } from './c.ts';" },
    { file: 'src/b.ts', source: "export * from './d.ts';" },
    { file: 'src/c.ts', source: "import 'node:path';" },
    { file: 'src/d.ts', source: "import { join } from 'node:path'; import 'zod';" },
  ];
  expect(waysToNode(files, ['src/a.ts'])).toEqual(['src/a.ts > src/b.ts > src/d.ts > node:path']);
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
    expect(domFaults('src/site/guide/browser/a.ts', source)).toEqual([]);
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
    expect(domFaults('src/pages/a.astro', page('const a = 1;', "import '../site/guide/browser/sort.ts';"))).toEqual([]);
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

/** A small, valid content folder in a temporary place, for tests that break it or build on it. */
import { cpSync, globSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { idsIn } from '../../src/content/read/body-links.ts';
import type { Content } from '../../src/content/read/content.ts';
import { productTexts, type TextCollection } from '../../src/content/read/product-texts.ts';
import { readContent } from '../../src/content/read/read-content.ts';
import { valueAt } from '../../src/content/schema/block.ts';
import type { Problem } from '../../src/content/schema/problem.ts';
import { METHODS } from '../../src/measure/methods.ts';
import { tinyKept } from './tiny-kept.ts';

/** The day that counts as today in every test of content. */
export const TODAY = '2026-11-25';

const FIXTURES = fileURLToPath(new URL('../fixtures', import.meta.url));

/** A content folder on disk; paths are relative to it. */
export interface ContentFolder {
  folder: string;
  read(path: string): string;
  write(path: string, text: string | Uint8Array): void;
  /** Puts `to` in the place of `from`, which must stand in the file exactly once. */
  edit(path: string, from: string, to: string): void;
  remove(path: string): void;
  /** Lays a folder of tests/fixtures over it. */
  lay(fixture: string): void;
  /** Line, from 1, on which a text stands that the file has exactly once. */
  lineOf(path: string, text: string): number;
  problems(): Problem[];
  /** Throws where there are problems. */
  content(): Content;
  delete(): void;
}

/** The folder of tests/fixtures/tiny-content, with texts of its own for two methods and the cautions: two panels, no problem. */
export function tinyContent(): ContentFolder {
  const folder = mkdtempSync(join(tmpdir(), 'tiny-content-'));
  const at = (path: string) => join(folder, path);
  const read = (path: string) => readFileSync(at(path), 'utf8');
  const write = (path: string, text: string | Uint8Array) => {
    mkdirSync(dirname(at(path)), { recursive: true });
    writeFileSync(at(path), text);
  };
  const once = (path: string, text: string) => {
    const parts = read(path).split(text);
    if (parts.length !== 2) throw new Error(`${path} has "${text}" ${parts.length - 1} times`);
    return parts as [string, string];
  };
  const lay = (fixture: string) => cpSync(join(FIXTURES, fixture), folder, { recursive: true });
  lay('tiny-content');
  for (const id of ['rank', 'claims']) write(`methods/${id}.mdx`, methodPage(id));
  // Other pages lead to all the parts that the product's cautions have.
  const cautions = productTexts('cautions').get('cautions')?.source;
  if (!cautions) throw new Error('the product has no cautions');
  const parts = idsIn(cautions)
    .filter((it) => it !== 'eyes')
    .map((it) => `\n## ${it.replaceAll('-', ' ')}\n`);
  const own = read('cautions.mdx').replace('---', `---\nstandsFor: ${editionOf('cautions', 'cautions')}`);
  write('cautions.mdx', own + parts.join(''));
  const laid = globSync('**/*.{yaml,md,mdx}', { cwd: folder });
  const kept = tinyKept(folder, laid);
  return {
    folder,
    read,
    write,
    lay,
    edit(path, from, to) {
      write(path, once(path, from).join(to));
    },
    remove: (path) => rmSync(at(path), { recursive: true }),
    lineOf: (path, text) => once(path, text)[0].split('\n').length,
    problems: () => [...readContent({ folder, today: TODAY, kept }).problems],
    content() {
      const { content, problems } = readContent({ folder, today: TODAY });
      if (!content) throw new Error(`the content has problems: ${JSON.stringify(problems, null, 1)}`);
      return content;
    },
    delete: () => rmSync(folder, { recursive: true, force: true }),
  };
}

const editionOf = (collection: TextCollection, id: string) =>
  valueAt(productTexts(collection).get(id)?.source?.data, ['edition']);

/** The shortest page that a method may have, with a history up to its version. */
function methodPage(id: string): string {
  const versions = Array.from(
    { length: METHODS.find((it) => it.id === id)?.version ?? 0 },
    (_, i) => `  - { version: ${i + 1}, date: 2026-01-0${i + 1}, change: Written. }`,
  );
  return `---
standsFor: ${editionOf('methods', id)}
summary: A page for the tests, as short as may be.
goodFor: [Tests]
hides: [Everything]
sources:
  - { text: Invented for the tests, standing: practice }
versions:
${versions.join('\n')}
---

One line.
`;
}

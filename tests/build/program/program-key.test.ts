/** A program is another one when what the bundler sees is: code, texts that it compiles, and where the guide will lie. */
import { globSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { programKey } from '../../../src/build/program/program-key.ts';
import type { Content } from '../../../src/content/read/content.ts';
import { readFrontMatter } from '../../../src/content/read/read-source.ts';
import { panelSchema } from '../../../src/content/schema/panel.ts';
import { type ContentFolder, tinyContent } from '../../support/content-folder.ts';

const { stamp } = vi.hoisted(() => ({ stamp: { of: 'code' } }));
vi.mock('../../../src/build/source-stamp.ts', () => ({ buildStamp: () => stamp.of }));

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
  vi.stubEnv('LEDGER_CONTENT', content.folder);
});
afterEach(() => {
  content.delete();
  vi.unstubAllEnvs();
});

const PLOVER = 'panels/plover/index.md';
/** Of the content, what a key is made of: panels' files and notes. */
function key(base = '/'): string {
  const files = globSync('panels/*/index.{md,mdx}', { cwd: content.folder }).toSorted();
  const panels = files.map((file) => {
    const path = join(content.folder, file);
    const { id, source } = { id: file.split('/')[1] ?? '', source: readFrontMatter(path, file, panelSchema).source };
    if (!source) throw new Error(`${file} can't be read`);
    return [id, { id, source }] as const;
  });
  return programKey({ content: { panels: new Map(panels) } as unknown as Content }, base);
}

test('is the same after a price, a plain note, another title and another panel', () => {
  const before = key();
  const plover = content.read(PLOVER);
  content.write(PLOVER, `${plover}\nAnother line.\n`.replace(/(paid: )(\d+)/, '$12.5'));
  expect(content.read(PLOVER)).not.toContain(plover);
  content.write('panels/dunlin/index.md', plover.replace(/^model: .*$/m, 'model: Dunlin'));
  expect(key()).toBe(before);
});

test('is another one by the code, and by the place on the host', () => {
  const keys = [key(), key('/some/path/')];
  stamp.of = 'other code';
  keys.push(key());
  stamp.of = 'code';
  expect(new Set(keys).size).toBe(3);
  expect(key()).toBe(keys[0]);
});

test('is another one by notes that are compiled, and by what they say', () => {
  const keys = [key()];
  const plover = content.read(PLOVER);
  content.remove(PLOVER);
  for (const text of [plover, `${plover}\nAnother line.\n`]) {
    content.write(`${PLOVER}x`, text);
    keys.push(key());
  }
  expect(new Set(keys).size).toBe(3);
});

test('is another one by a text of the tester’s own, and by what such a text can take in', () => {
  const file = 'cautions.mdx';
  const keys = [key()];
  content.write(file, `${content.read(file)}\nAnother line.\n`);
  keys.push(key());
  content.write('panels/plover/drawing.svg', '<svg xmlns="http://www.w3.org/2000/svg"/>');
  keys.push(key());
  content.edit('guide.yaml', 'title:', '# a remark\ntitle:');
  keys.push(key());
  expect(new Set(keys).size).toBe(4);
});

test('without texts of one’s own, no picture is anything to it', () => {
  for (const it of ['methods', 'cautions.mdx']) content.remove(it);
  const before = key();
  content.write('panels/plover/drawing.svg', '<svg xmlns="http://www.w3.org/2000/svg"/>');
  expect(key()).toBe(before);
});

/** Schemas for editors lie where a guide's files point to. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { schemaFolder, writeEditorSchemas } from '../../src/build/editor-schemas.ts';
import { productFolder } from '../../src/content/read/product-folder.ts';
import { COLLECTIONS } from '../../src/content/schema/collections.ts';
import { type ContentFolder, tinyContent } from '../support/content-folder.ts';

let folder: ContentFolder;
beforeEach(() => {
  folder = tinyContent();
});
afterEach(() => folder.delete());

const point = (to: string) =>
  folder.write(
    'guide.yaml',
    `# yaml-language-server: $schema=${to}\n${folder.read('guide.yaml').replace(/^# yaml-l.*\n/, '')}`,
  );

test('one for each kind of content, and the kind of each file', () => {
  point('.schemas/guide.schema.json');
  const place = join(folder.folder, '.schemas');
  expect(writeEditorSchemas(folder.folder)).toBe(place);
  for (const name of Object.keys(COLLECTIONS)) {
    const schema = JSON.parse(readFileSync(join(place, `${name}.schema.json`), 'utf8'));
    expect(Object.keys(schema.properties).length, name).toBeGreaterThan(name === 'corrections' ? 0 : 2);
  }
  const { collections, entries } = JSON.parse(readFileSync(join(place, 'collections.json'), 'utf8'));
  expect(collections).toContainEqual({ hasSchema: true, name: 'panels' });
  expect(entries[`file://${folder.folder}/panels/plover/index.md`.toLowerCase()]).toBe('panels');
});

test.each([
  ['nowhere', undefined],
  ['to the web', 'https://a.example/guide.schema.json'],
  ['to something else', './notes.json'],
])('nothing is written where guide.yaml points %s', (_, to) => {
  if (to) point(to);
  else folder.write('guide.yaml', folder.read('guide.yaml').replace(/^# yaml-l.*\n/, ''));
  expect([schemaFolder(folder.folder), writeEditorSchemas(folder.folder)]).toEqual([undefined, undefined]);
});

test('in a checkout of the product Astro writes them', () => {
  point(join(productFolder(), '.astro/collections/guide.schema.json'));
  expect(schemaFolder(folder.folder)).toBe(join(productFolder(), '.astro/collections'));
  expect(writeEditorSchemas(folder.folder)).toBeUndefined();
  expect(existsSync(join(folder.folder, '.astro'))).toBe(false);
});

import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { LoaderContext } from 'astro/loaders';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { checkedLoader } from '../../src/build/checked-loader.ts';
import { COLLECTIONS, type CollectionName } from '../../src/content/schema/collections.ts';
import { type ContentFolder, TODAY, tinyContent } from '../support/content-folder.ts';

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
  vi.stubEnv('LEDGER_CONTENT', content.folder);
  vi.stubEnv('LEDGER_TODAY', TODAY);
});
afterEach(() => {
  content.delete();
  vi.unstubAllEnvs();
});

const PLOVER = 'panels/plover/index.md';

/** What the loader leaves in the store, and what it had rendered. */
async function load(name: CollectionName = 'panels') {
  const entries = new Map<string, Record<string, unknown>>();
  const rendered: string[] = [];
  await checkedLoader(name).load({
    config: { root: pathToFileURL(`${resolve('.')}/`) },
    store: { set: (it: { id: string }) => entries.set(it.id, { ...it }) },
    renderMarkdown: async (text: string) => {
      rendered.push(text);
      return { html: text, metadata: { imagePaths: ['./wall.jpg'] } };
    },
  } as unknown as LoaderContext);
  return { entries, rendered };
}

test('has every panel’s notes rendered, and nothing of its readings', async () => {
  const { entries, rendered } = await load();
  expect([...entries.keys()].toSorted()).toEqual([...content.content().panels.keys()].toSorted());
  const plover = entries.get('plover');
  expect(plover).toMatchObject({ data: {}, assetImports: ['./wall.jpg'] });
  expect(String(plover?.filePath)).toMatch(/tiny-content-.*\/panels\/plover\/index\.md$/);
  expect(rendered.join('')).not.toContain('sessions:');
});

test('notes that begin with a rule keep all of their text', async () => {
  content.write(
    PLOVER,
    `${content.read(PLOVER).trimEnd()}\n`.replace(/(\n---\n)[\s\S]*$/, '$1---\n\nBelow the rule.\n\n---\n'),
  );
  const { rendered } = await load();
  expect(rendered).toContain('---\n---\n---\n\nBelow the rule.\n\n---\n');
});

test('leaves MDX to the bundler', async () => {
  const text = content.read(PLOVER);
  content.remove(PLOVER);
  content.write(`${PLOVER}x`, text);
  const { entries } = await load();
  expect(entries.get('plover')).toMatchObject({ deferredRender: true });
  expect(entries.get('plover')).not.toHaveProperty('rendered');
});

test('names every entry of every collection and its file, so that editors find its schema', async () => {
  const read = content.content();
  const idsOf = (name: CollectionName) =>
    name === 'guide' || name === 'cautions' ? [read[name].id] : [...read[name].keys()];
  for (const name of Object.keys(COLLECTIONS) as CollectionName[]) {
    const { entries } = await load(name);
    expect([...entries.keys()].toSorted(), name).toEqual(idsOf(name).toSorted());
    for (const it of entries.values()) expect(String(it.filePath), name).toMatch(/tiny-content-.*\.(yaml|mdx?)$/);
  }
});

test('leaves the pages of methods and cautions to the bundler, and nothing of what stands above them', async () => {
  for (const [name, id] of [
    ['methods', 'rank'],
    ['cautions', 'cautions'],
  ] as const) {
    const { entries } = await load(name);
    expect(entries.get(id)).toMatchObject({ deferredRender: true, data: {} });
  }
});

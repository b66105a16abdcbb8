import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { LoaderContext } from 'astro/loaders';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { notesLoader } from '../../src/build/notes-loader.ts';
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
async function load(entries = new Map<string, Record<string, unknown>>()) {
  const rendered: string[] = [];
  await notesLoader().load({
    config: { root: pathToFileURL(`${resolve('.')}/`) },
    store: {
      keys: () => entries.keys(),
      get: (id: string) => entries.get(id),
      delete: (id: string) => entries.delete(id),
      set: (it: { id: string }) => entries.set(it.id, { ...it }),
    },
    generateDigest: (text: string) => text,
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

test('renders again what has changed alone, and lets go of what is gone', async () => {
  const { entries, rendered } = await load();
  expect(rendered).toHaveLength(2);
  entries.set('gone', {});
  content.write(PLOVER, `${content.read(PLOVER)}\nAnother line.\n`);
  // Another day, for a ledger is worked out once a process.
  vi.stubEnv('LEDGER_TODAY', '2026-11-26');
  const again = await load(entries);
  expect(again.rendered).toEqual([expect.stringContaining('Another line.')]);
  expect([...entries.keys()].toSorted()).toEqual(['plover', 'teasel']);
});

import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { LoaderContext } from 'astro/loaders';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { notesLoader } from '../../src/build/notes-loader.ts';
import { type ContentFolder, TODAY, tinyContent } from '../support/content-folder.ts';

const PLOVER = 'panels/plover/index.md';

let content: ContentFolder;
let plain: string;
beforeEach(() => {
  content = tinyContent();
  plain = content.read(PLOVER);
  content.write('panels/plover/wall.svg', '<svg xmlns="http://www.w3.org/2000/svg"/>');
  vi.stubEnv('LEDGER_CONTENT', content.folder);
  vi.stubEnv('LEDGER_TODAY', TODAY);
});
afterEach(() => {
  content.delete();
  vi.unstubAllEnvs();
});

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
      return { html: text, metadata: { imagePaths: ['./wall.svg'] } };
    },
  } as unknown as LoaderContext);
  return { entries, rendered };
}

const PICTURE = '\n![The wall](./wall.svg)\n';
const pictured = (more = '') => content.write(PLOVER, `${plain}${more}${PICTURE}`);

test('leaves plain notes to the pages, and hands over those with pictures, without their readings', async () => {
  expect([...(await load()).entries.keys()]).toEqual([]);
  vi.stubEnv('LEDGER_TODAY', '2026-11-27');
  pictured();
  const { entries, rendered } = await load();
  expect([...entries.keys()]).toEqual(['plover']);
  expect(entries.get('plover')).toMatchObject({ data: {}, assetImports: ['./wall.svg'] });
  expect(String(entries.get('plover')?.filePath)).toMatch(/tiny-content-.*\/panels\/plover\/index\.md$/);
  expect(rendered.join('')).not.toContain('sessions:');
});

test('notes that begin with a rule keep all of their text', async () => {
  content.write(PLOVER, `${plain.trimEnd()}\n`.replace(/(\n---\n)[\s\S]*$/, `$1---\n\nBelow the rule.\n${PICTURE}`));
  const { rendered } = await load();
  expect(rendered).toEqual([expect.stringMatching(/^---\n---\n---\n\nBelow the rule\.\n/)]);
});

test('leaves MDX to the bundler', async () => {
  content.remove(PLOVER);
  content.write(`${PLOVER}x`, plain);
  const { entries } = await load();
  expect(entries.get('plover')).toMatchObject({ deferredRender: true });
  expect(entries.get('plover')).not.toHaveProperty('rendered');
});

test('renders again what has changed alone, and lets go of what is gone', async () => {
  pictured();
  const { entries, rendered } = await load();
  expect(rendered).toHaveLength(1);
  entries.set('gone', {});
  // Another day, for a ledger is worked out once a process.
  vi.stubEnv('LEDGER_TODAY', '2026-11-26');
  expect((await load(entries)).rendered).toEqual([]);
  pictured('\nAnother line.\n');
  vi.stubEnv('LEDGER_TODAY', '2026-11-27');
  expect((await load(entries)).rendered).toEqual([expect.stringContaining('Another line.')]);
  expect([...entries.keys()]).toEqual(['plover']);
});

test('in a process that makes a program, takes the notes that it was told of', async () => {
  const shared = globalThis as { panelLedgerProgramOrder?: unknown };
  shared.panelLedgerProgramOrder = { draft: '', base: '/', notes: [{ id: 'dab', path: 'dab/index.mdx', body: 'x' }] };
  try {
    expect([...(await load()).entries.keys()]).toEqual(['dab']);
  } finally {
    delete shared.panelLedgerProgramOrder;
  }
});

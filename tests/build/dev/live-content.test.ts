import { EventEmitter } from 'node:events';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { liveContent, PROBLEMS_EVENT } from '../../../src/build/dev/live-content.ts';
import { liveLedger } from '../../../src/ledger/load-ledger.ts';
import { type ContentFolder, TODAY, tinyContent } from '../../support/content-folder.ts';

const PLOVER = 'panels/plover/index.md';

let content: ContentFolder;
let sent: Array<{ type: string; event?: string; data?: unknown }>;
let printed: string[];
let refreshed: number;
let areRendered: boolean;
/** Of the content, as pages are told while notes are rendered. */
let duringRefresh: string | undefined;
let watcher: EventEmitter;
beforeEach(() => {
  content = tinyContent();
  vi.stubEnv('LEDGER_CONTENT', content.folder);
  vi.stubEnv('LEDGER_TODAY', TODAY);
  [sent, printed, refreshed, areRendered] = [[], [], 0, true];
  watcher = new EventEmitter();
});
afterEach(() => {
  content.delete();
  vi.unstubAllEnvs();
});

/** Starts to follow the content, and forgets what was told of it at once. */
function follow() {
  const state = liveContent({
    watcher: Object.assign(watcher, { add: () => {} }),
    send: (message) => sent.push(message),
    refreshNotes: async () => {
      refreshed++;
      duringRefresh = state().version;
    },
    areRendered: () => areRendered,
    print: (text) => printed.push(text),
  });
  printed = [];
  return state;
}

const saved = (path = PLOVER) => watcher.emit('all', 'change', join(content.folder, path));
const told = (type: string) => sent.filter((it) => it.type === type);
const edit = (from: string, to: string) => content.edit(PLOVER, from, to);

test('a saved file has open pages load again, once it is worked out; notes are rendered for notes alone', async () => {
  const state = follow();
  const { version } = state();
  edit('paid: 200', 'paid: 199');
  saved();
  await expect.poll(() => told('full-reload')).toHaveLength(1);
  expect(liveLedger().ledger.panels.get('plover')?.prices[0]?.price.paid).toBe(199);
  expect(state().version).not.toBe(version);
  expect(refreshed).toBe(0);
  content.write(PLOVER, `${content.read(PLOVER)}\nAnother note.\n`);
  saved();
  await expect.poll(() => told('full-reload')).toHaveLength(2);
  expect(refreshed).toBe(1);
  // A page that loads meanwhile has the notes of before, and has to find out.
  expect(duringRefresh).not.toBe(state().version);
});

test('files saved together are followed together; what lies elsewhere is not followed', async () => {
  follow();
  for (let i = 0; i < 5; i++) saved();
  await expect.poll(() => told('full-reload')).toHaveLength(1);
  watcher.emit('all', 'change', '/elsewhere/panels/plover/index.md');
  await new Promise((resolve) => setTimeout(resolve, 100));
  expect(told('full-reload')).toHaveLength(1);
});

test('a problem is told in pages and once in the terminal, and pages stay as they were; mended, it goes', async () => {
  const state = follow();
  edit('paid: 200', 'paid: lots');
  saved();
  await expect.poll(() => told('custom')).toHaveLength(1);
  saved();
  await new Promise((resolve) => setTimeout(resolve, 200));
  expect(told('custom')).toMatchObject([
    {
      event: PROBLEMS_EVENT,
      data: [{ file: expect.stringMatching(/plover/), field: 'prices[1].paid', found: '"lots"' }],
    },
  ]);
  expect(printed).toHaveLength(1);
  expect(printed[0]).toMatch(
    /prices\[1\]\.paid\n {2}found {3}"lots"\n[\s\S]*1 problem in 1 file; pages stay as they were/,
  );
  expect(state().problems).toHaveLength(1);
  expect(told('full-reload')).toEqual([]);
  expect(liveLedger().ledger.panels.get('plover')?.prices[0]?.price.paid).toBe(200);

  edit('paid: lots', 'paid: 201');
  saved();
  await expect.poll(() => told('full-reload')).toHaveLength(1);
  expect(told('custom').at(-1)).toMatchObject({ data: [] });
  expect(printed.at(-1)).toBe('Mended: the pages follow again.');
  expect(state().problems).toEqual([]);
});

test('what is odd is told when it comes up, and not again', async () => {
  follow();
  edit('width: 20 cm', 'width: 200');
  saved();
  await expect.poll(() => told('full-reload')).toHaveLength(1);
  expect(printed.join('')).toMatch(/impossible {2}.*plover/);
  const count = printed.length;
  content.write(PLOVER, `${content.read(PLOVER)}\nA note.\n`);
  saved();
  await expect.poll(() => told('full-reload')).toHaveLength(2);
  expect(printed).toHaveLength(count);
});

test('notes that could not be rendered at once are asked for again before pages load', async () => {
  follow();
  areRendered = false;
  content.write(PLOVER, `${content.read(PLOVER)}\nA note.\n`);
  saved();
  await expect.poll(() => refreshed).toBeGreaterThan(1);
  expect(told('full-reload')).toEqual([]);
  areRendered = true;
  await expect.poll(() => told('full-reload')).toHaveLength(1);
});

test('content with a problem from the start: it is told, and there is no ledger until it is mended', async () => {
  edit('paid: 200', 'paid: lots');
  const state = follow();
  expect(state().problems).toHaveLength(1);
  expect(() => liveLedger()).toThrow(/lots/);
  edit('paid: lots', 'paid: 200');
  saved();
  await expect.poll(() => told('full-reload')).toHaveLength(1);
  expect(refreshed).toBe(1);
  expect(liveLedger().ledger.panels.has('plover')).toBe(true);
});

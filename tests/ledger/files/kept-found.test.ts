/** What is found in files is kept from one process to the next, and says the same as what is found anew. */
import { appendFileSync, cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, expect, test, vi } from 'vitest';
import { readContent } from '../../../src/content/read/read-content.ts';
import type { SessionMade } from '../../../src/ledger/files/file-maker.ts';
import { panelContext } from '../../../src/ledger/panel-context.ts';
import { forgetResults, keepResults, releaseResults } from '../../../src/ledger/result-store.ts';
import { workedPanels } from '../../../src/ledger/worked-panels.ts';
import { warmUp } from '../../../src/measure/log/warm-up.ts';
import { clipReading } from '../../../src/measure/sound/clip-reading.ts';
import { wallReading } from '../../../src/measure/wall/wall-results.ts';
import { flickerWaveform } from '../../../src/measure/waveform/flicker-waveform.ts';
import { DEMO_FOLDER, layDemo } from '../../support/demo-folder.ts';

const place = vi.hoisted(() => ({ folder: '' }));
vi.mock('../../../src/content/read/cache-folder.ts', () => ({ cacheFolder: () => place.folder }));
vi.mock('../../../src/measure/log/warm-up.ts', { spy: true });
vi.mock('../../../src/measure/sound/clip-reading.ts', { spy: true });
vi.mock('../../../src/measure/wall/wall-results.ts', { spy: true });
vi.mock('../../../src/measure/waveform/flicker-waveform.ts', { spy: true });

const SLUG = 'ruddlestone-r150';
const TODAY = '2026-11-25';
let folder: string;
const at = (name: string) => join(folder, 'content/panels', SLUG, name);
beforeAll(() => {
  layDemo();
  folder = mkdtempSync(join(tmpdir(), 'kept-found-'));
  place.folder = join(folder, 'cache');
  cpSync(DEMO_FOLDER, join(folder, 'content'), { recursive: true });
});
afterEach(releaseResults);
afterAll(() => rmSync(folder, { recursive: true }));

function content() {
  const read = readContent({ folder: join(folder, 'content'), today: TODAY });
  if (!read.content) throw new Error(`${read.problems.length} problems`);
  return read.content;
}

const SPIES = { wall: wallReading, log: warmUp, flicker: flickerWaveform, sound: clipReading };

/** What a process of its own makes of the panel's files, and what it had to look for. */
function asked(): { made: SessionMade; lookedFor: string[] } {
  releaseResults();
  for (const it of Object.values(SPIES)) vi.mocked(it).mockClear();
  const all = content();
  const entry = all.panels.get(SLUG);
  if (!entry) throw new Error('no such panel');
  const [single] = workedPanels([entry], all, TODAY);
  keepResults();
  if (!single?.current) throw new Error('no session');
  const lookedFor = Object.entries(SPIES).flatMap(([name, it]) => (vi.mocked(it).mock.calls.length > 0 ? [name] : []));
  return { made: single.current.made, lookedFor };
}

/** Plain data of what is made, by block. */
const shown = (made: SessionMade = new Map()) =>
  [...made].map(([block, { view, figures }]) => [block, structuredClone(plain(view)), figures] as const);
const plain = (view: object) =>
  Array.isArray(view) ? view : Object.fromEntries(Object.entries(view).filter(([, it]) => typeof it !== 'function'));

test('is found once, and the same figures and drawings come of it', () => {
  const first = asked();
  expect(first.lookedFor).toEqual(['wall', 'log', 'flicker', 'sound']);
  const again = asked();
  expect(again.lookedFor).toEqual([]);
  expect([...again.made.keys()]).toEqual(expect.arrayContaining(['wallPhoto', 'warmUpLog', 'waveforms']));
  expect(shown(again.made)).toEqual(shown(first.made));
  const all = content();
  const entry = all.panels.get(SLUG);
  const anew = entry && panelContext(entry, all, TODAY).sessions[0]?.made;
  expect(shown(anew).map(([block, view]) => [block, view])).toEqual(
    shown(again.made).map(([block, view]) => [block, view]),
  );
});

test('is looked for again in a file that says something else, and in no other', () => {
  asked();
  appendFileSync(at('wall.jpg'), 'x');
  expect(asked().lookedFor).toEqual(['wall']);
  writeFileSync(
    at('warm-up.csv'),
    readFileSync(at('warm-up.csv'), 'utf8').trimEnd().split('\n').slice(0, -1).join('\n'),
  );
  expect(asked().lookedFor).toEqual(['log']);
  expect(asked().lookedFor).toEqual([]);
});

test('is looked for again where the same file is to be read in another way', () => {
  asked();
  const text = readFileSync(at('index.md'), 'utf8');
  // LEDs that stand otherwise make other dots on the wall, and whatever else was typed does not matter to it.
  writeFileSync(at('index.md'), text.replace('count: 150', 'count: 176').replace('ledCount: 150', 'ledCount: 176'));
  expect(asked().lookedFor).toEqual(['wall']);
  writeFileSync(at('index.md'), text.replace('paid: 519', 'paid: 509'));
  expect(asked().lookedFor).toEqual([]);
});

test('a folder that nothing can be written to is no reason to fail', () => {
  place.folder = at('index.md');
  expect(asked().lookedFor).toEqual(['wall', 'log', 'flicker', 'sound']);
  expect(asked().lookedFor).toEqual(['wall', 'log', 'flicker', 'sound']);
  forgetResults();
  expect(asked().lookedFor).toEqual(['wall', 'log', 'flicker', 'sound']);
  place.folder = join(folder, 'cache');
});

/** Long data files that are put together from pieces of the build before: the bytes are those of one that kept nothing. */
import {
  appendFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { keptPages } from '../../src/build/kept-pages.ts';
import { writeFiles } from '../../src/build/write-files.ts';
import { loadLedger } from '../../src/ledger/load-ledger.ts';
import { isPanelPiece } from '../../src/site/export/panel-piece.ts';
import type { PublishedFile } from '../../src/site/export/published-file.ts';
import { publishedFiles } from '../../src/site/export/published-files.ts';
import { watched } from '../../src/site/shared/page-reads.ts';
import { DEMO_FOLDER, layDemo } from '../support/demo-folder.ts';

let root: string;
const at = (path: string) => join(root, path);
beforeAll(() => {
  layDemo();
  root = mkdtempSync(join(tmpdir(), 'kept-pieces-'));
  cpSync(DEMO_FOLDER, at('content'), { recursive: true });
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

function edit(path: string, change: (text: string) => string): void {
  const before = readFileSync(at(path), 'utf8');
  const after = change(before);
  expect(after, path).not.toBe(before);
  writeFileSync(at(path), after);
}

/** The same file, which names the pieces that were made anew. */
const telling = (file: PublishedFile, made: string[]): PublishedFile => ({
  ...file,
  *text() {
    for (const piece of file.text()) {
      if (!isPanelPiece(piece)) yield piece;
      else {
        const noted = () => {
          made.push(`${file.path} ${piece.panel}`);
          return String(piece);
        };
        yield { ...piece, toString: noted };
      }
    }
  },
});

/** Writes the long files of the content as it is, and tells which pieces were made anew. */
async function write(place: string, { isFresh = false, isCutOff = false } = {}): Promise<string[]> {
  vi.stubEnv('LEDGER_CONTENT', at('content'));
  vi.stubEnv('LEDGER_TODAY', '2026-11-25');
  const loaded = loadLedger({ watch: true });
  const pages = keptPages(at(`${place}/kept`));
  pages.open(loaded, isFresh);
  const made: string[] = [];
  const files = publishedFiles(watched(loaded), { code: '', isTester: false });
  rmSync(at(`${place}/site`), { recursive: true, force: true });
  await writeFiles(
    files.filter((it) => it.isOfPanels).map((it) => telling(it, made)),
    at(`${place}/site`),
    pages,
  );
  if (!isCutOff) pages.close();
  return made;
}

/** Every file, by its path. */
const written = (place: string) =>
  Object.fromEntries(
    readdirSync(at(`${place}/site`), { recursive: true, withFileTypes: true })
      .filter((it) => it.isFile())
      .map((it) => [it.name, readFileSync(join(it.parentPath, it.name), 'utf8')]),
  );

/** After a change: what was made anew, where the bytes are those of files that are made whole. */
async function madeAfter(change: () => void): Promise<string[]> {
  change();
  const made = await write('again');
  await write('whole', { isFresh: true });
  // One by one: a difference of files this long is not worth printing.
  const [again, whole] = [written('again'), written('whole')];
  expect(Object.keys(again)).toEqual(Object.keys(whole));
  for (const [name, text] of Object.entries(whole)) expect(again[name] === text, name).toBe(true);
  return made;
}

const slugsOf = (made: string[], path: string) =>
  made.filter((it) => it.startsWith(`${path} `)).map((it) => it.slice(path.length + 1));

const DAB = 'content/panels/quennick-dab/index.md';
const FIRST = 'content/panels/fennimarsh-reed/index.md';
const LONG = ['data/panels.json', 'data/panels.csv', 'data/tables/figures.csv', 'data/tables/readings.csv'];

test('pieces are made anew where what they rest on has changed, and by no other', async () => {
  const all = await madeAfter(() => {});
  expect(new Set(all.map((it) => it.split(' ')[0]))).toEqual(new Set(LONG));
  const panels = slugsOf(all, 'data/panels.json');
  expect(panels.length).toBeGreaterThan(8);
  for (const path of LONG) expect(slugsOf(all, path)).toEqual(panels);
  expect(await madeAfter(() => {})).toEqual([]);

  // A price moves ranks of others of its size, which one of the files has; their figures stay.
  const price = await madeAfter(() => edit(DAB, (it) => it.replace(/(paid: )(\d+)/, '$1$2.5')));
  expect(slugsOf(price, 'data/panels.json')).toContain('quennick-dab');
  expect(slugsOf(price, 'data/panels.json').length).toBeLessThan(panels.length);
  for (const path of LONG.slice(1)) expect(slugsOf(price, path)).toEqual(['quennick-dab']);

  // A text that the first panel has no more comes to another place, and those behind it too.
  const struck = await madeAfter(() =>
    edit(FIRST, (it) => it.replace(/^obtained: .*\n/m, '').replace(/^weight: .*\n/m, '')),
  );
  expect(slugsOf(struck, 'data/tables/readings.csv')).toEqual(['fennimarsh-reed']);
  const moved = await madeAfter(() =>
    edit(FIRST, (it) => it.replace(/^ {2}power: 100 W\n/m, '').replace(/^ {2}ledCount: 48\n/m, '')),
  );
  expect(slugsOf(moved, 'data/panels.json')).toContain('fennimarsh-reed');
  expect(slugsOf(moved, 'data/panels.csv')).toEqual(['fennimarsh-reed']);

  // One that is new, and one that is gone, move places in lists of ties alone.
  const one = 'content/panels/one-more';
  const more = await madeAfter(() => {
    mkdirSync(at(one));
    const text = readFileSync(at('content/panels/ruddlestone-r60/index.md'), 'utf8');
    writeFileSync(
      at(`${one}/index.md`),
      text.replace(/^model: .*$/m, 'model: One more').replace(/^formerly: .*\n/m, ''),
    );
  });
  expect(slugsOf(more, 'data/tables/readings.csv')).toEqual(['one-more']);
  const less = await madeAfter(() => rmSync(at(one), { recursive: true }));
  expect(slugsOf(less, 'data/tables/readings.csv')).toEqual([]);

  // What the content has besides panels is every piece's.
  const coil = 'content/instruments/three-axis-coil.yaml';
  expect(await madeAfter(() => edit(coil, (it) => it.replace(/^name: .*$/m, 'name: Another name')))).toHaveLength(
    all.length,
  );
  const method = await madeAfter(() => {
    mkdirSync(at('content/methods'), { recursive: true });
    cpSync('src/texts/methods/optical-power.mdx', at('content/methods/optical-power.mdx'));
  });
  expect(method).toHaveLength(all.length);
});

test('a file that somebody has written into is made anew, and what is published of it is another file', async () => {
  await write('again', { isFresh: true });
  const published = at('again/site/data/panels.csv');
  appendFileSync(published, 'spoilt\n');
  const before = at('published.csv');
  cpSync(published, before);
  expect(new Set((await madeAfter(() => {})).map((it) => it.split(' ')[0]))).toEqual(new Set(['data/panels.csv']));
  expect(readFileSync(before, 'utf8')).toContain('spoilt');
});

test('a build that was cut off leaves nothing that is taken for whole', async () => {
  const all = await write('again', { isFresh: true });
  expect(await write('again')).toEqual([]);
  await write('again', { isCutOff: true });
  expect(existsSync(at('again/kept/pieces.json'))).toBe(false);
  expect(await madeAfter(() => {})).toEqual(all);
});

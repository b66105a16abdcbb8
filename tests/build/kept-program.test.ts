/** The program that Astro has made is kept for what the bundler sees: code, texts and pictures, and no front matter. */
import { cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { keptProgram } from '../../src/build/kept-program.ts';
import { loadLedger } from '../../src/ledger/load-ledger.ts';
import { DEMO_FOLDER } from '../support/demo-folder.ts';

const { folder } = vi.hoisted(() => ({ folder: { content: '' } }));
vi.mock('../../src/ledger/load-ledger.ts', async (original) => ({
  ...(await original<typeof import('../../src/ledger/load-ledger.ts')>()),
  contentFolder: () => folder.content,
}));

let root: string;
beforeEach(async () => {
  root = await mkdtemp(join(tmpdir(), 'panel-ledger-program-'));
  folder.content = join(root, 'content');
  cpSync(DEMO_FOLDER, folder.content, { recursive: true });
  mkdirSync(join(root, 'grown/.prerender'), { recursive: true });
  for (const [name, text] of [
    ['.prerender/prerender-entry.Ab12.mjs', 'export const app = 1;'],
    ['style.css', 'p {}'],
    ['index.html', '<p>'],
  ] as const) {
    writeFileSync(join(root, 'grown', name), text);
  }
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

const load = () => loadLedger({ folder: folder.content, watch: true });
const edit = (path: string, change: (text: string) => string) => {
  const file = join(folder.content, path);
  const before = readFileSync(file, 'utf8');
  expect(change(before)).not.toBe(before);
  writeFileSync(file, change(before));
};

test('it is the same after a price, and none after a text, a setting of the guide or a picture', async () => {
  const program = keptProgram(join(root, 'kept'));
  const pages = new Map([['index', { styles: [{ depth: 0, order: 0 }], key: 'x' }]]);
  const save = () => program.save(join(root, 'grown'), pages as never, load());
  expect(program.open(load())).toBeUndefined();
  await save();
  const panel = 'panels/quennick-dab/index.md';
  edit(panel, (it) => it.replace(/(paid: )(\d+)/, '$1$2.5'));
  const kept = program.open(load());
  expect(kept).toMatchObject({ styles: [['index', { styles: [{ depth: 0, order: 0 }] }]] });
  expect(readFileSync(kept?.entry ?? '', 'utf8')).toBe('export const app = 1;');
  expect(readFileSync(join(kept?.assets ?? '', 'style.css'), 'utf8')).toBe('p {}');
  // Pages are written anew, or kept by themselves.
  expect(() => readFileSync(join(kept?.assets ?? '', 'index.html'))).toThrow('ENOENT');

  for (const change of [
    () => edit(panel, (it) => `${it}\nOne more line.\n`),
    () => edit('guide.yaml', (it) => it.replace(/^title: .*$/m, 'title: Another title')),
    () =>
      cpSync(
        join(folder.content, 'panels/ostrel-lill/on-the-desk.png'),
        join(folder.content, 'panels/quennick-dab/x.png'),
      ),
  ]) {
    await save();
    expect(program.open(load())).toBeDefined();
    change();
    expect(program.open(load())).toBeUndefined();
  }
  await save();
  program.forget();
  expect(program.open(load())).toBeUndefined();
});

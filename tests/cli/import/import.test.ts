import { chmodSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type PanelFile, panelFiles } from '../../../src/cli/files/panel-files.ts';
import { writeSafely } from '../../../src/cli/files/write-safely.ts';
import { importCommand } from '../../../src/cli/import/import.ts';
import { type Import, planImports } from '../../../src/cli/import/plan.ts';
import { understood } from '../../../src/cli/import/understood.ts';
import { type ContentFolder, TODAY, tinyContent } from '../../support/content-folder.ts';
import { runCommand } from '../run-command.ts';

const PLOVER = 'panels/plover/index.md';

let content: ContentFolder;
let outside: string;
beforeEach(() => {
  content = tinyContent();
  outside = mkdtempSync(join(tmpdir(), 'import-'));
});
afterEach(() => {
  content.delete();
  rmSync(outside, { recursive: true });
});

function file(name: string, bytes: string | Uint8Array): string {
  writeFileSync(join(outside, name), bytes);
  return join(outside, name);
}
const run = (args: string[], answers?: string[]) => runCommand(importCommand, args, content.folder, answers);
/** Of a file that had other bytes when it was looked at. */
const importOf = (path: string): Import => ({
  file: { ...understood(path, 'other'), sha256: 'as it was' },
  panel: panelFiles(content.folder).find((it) => it.slug === 'plover') as PanelFile,
  session: { index: 0, date: '', data: {} },
  place: { path: ['otherFiles', '*'], words: '' },
  name: 'notes-3.txt',
  isThere: false,
  entry: { file: 'notes-3.txt', shows: 'Notes' },
});
const OTHER = ['--kind', 'other', '--panel', 'plover', '--set', 'shows=Notes of the day'];

describe('a file from the bench', () => {
  test('is copied beside the panel and named in its session; all else stays, byte for byte', async () => {
    const before = content.read(PLOVER);
    const { code, out, error } = await run([file('notes.txt', 'as read\n'), ...OTHER, '--yes']);
    expect([code, error]).toEqual([0, '']);
    expect(content.read('panels/plover/notes.txt')).toBe('as read\n');
    const after = content.read(PLOVER);
    const added = after.split('\n').filter((it) => !before.split('\n').includes(it));
    expect(added).toEqual([
      '    otherFiles:',
      expect.stringMatching(/^ +- \{ file: notes\.txt, shows: Notes of the day \}$/),
    ]);
    expect(after.length).toBe(before.length + added.join('\n').length + 1);
    expect(content.problems()).toEqual([]);
    expect(out).toContain('Wrote 2 files.');
  });

  test('is copied from disk to disk, with the rights of a file that is written there', async () => {
    const card = file('notes.txt', 'as read\n');
    chmodSync(card, 0o400);
    expect((await run([card, ...OTHER, '--yes'])).code).toBe(0);
    const mode = (path: string) => statSync(join(content.folder, path)).mode;
    expect(mode('panels/plover/notes.txt')).toBe(mode(PLOVER));
    const [copy] = planImports([importOf(card)]);
    expect(copy?.after).toEqual({ copyOf: card, sha256: 'as it was' });
    const changes = { files: [{ path: 'panels/plover/notes-3.txt', before: undefined, after: copy?.after }] };
    await expect(writeSafely(content.folder, changes, TODAY)).rejects.toThrow(`${card} was changed in the meantime`);
    expect(content.problems()).toEqual([]);
  });

  test('never takes another file’s place: it gets a number', async () => {
    content.write('panels/plover/notes.txt', 'another');
    await run([file('notes.txt', 'as read\n'), ...OTHER, '--yes']);
    expect(content.read('panels/plover/notes.txt')).toBe('another');
    expect(content.read('panels/plover/notes-2.txt')).toBe('as read\n');
    expect(content.read(PLOVER)).toContain('file: notes-2.txt');
  });

  test('is not put there twice under two names', async () => {
    content.write('panels/plover/older.txt', 'as read\n');
    const { code, error } = await run([file('notes.txt', 'as read\n'), ...OTHER, '--yes']);
    expect(code).toBe(1);
    expect(error).toContain('as older.txt');
  });

  test('that lies beside the panel already stays where it lies', async () => {
    content.write('panels/plover/notes.txt', 'as read\n');
    const path = join(content.folder, 'panels/plover/notes.txt');
    const { code, out } = await run([path, '--kind', 'other', '--set', 'shows=Notes of the day', '--yes']);
    expect(code).toBe(0);
    expect(out).toContain('stays where it lies');
    expect(content.problems()).toEqual([]);
  });

  test('what is not said is asked for', async () => {
    const { code, asked } = await run([file('notes.txt', 'x'), '--kind', 'other'], ['plover', 'Notes of the day', 'y']);
    expect(code).toBe(0);
    expect(asked.map((it) => it.split(/[?:]/)[0])).toEqual([
      'Of which panel is notes.txt',
      'shows, such as The bench notes as they were written',
      'Put it there',
    ]);
    expect(content.read(PLOVER)).toContain('shows: Notes of the day');
  });
});

describe('nothing is written', () => {
  let before: string;
  beforeEach(() => {
    before = content.read(PLOVER);
  });
  afterEach(() => expect(content.read(PLOVER)).toBe(before));

  test.each([
    ['there is no such file', ['gone.csv'], 'There is no file gone.csv'],
    ['no kind takes it', ['?'], 'is no file of a meter that is known'],
    ['there is no such panel', ['?', '--kind', 'other', '--panel', 'plovr'], 'did you mean plover?'],
    ['nobody can be asked for the panel', ['?', '--kind', 'other'], 'Add --panel'],
    ['there is no session of that day', ['?', ...OTHER, '--session', '2026-01-01'], 'no session of 2026-01-01'],
    ['a field is missing', ['?', '--kind', 'other', '--panel', 'plover'], 'Add --set shows='],
    ['a field is unknown', ['?', ...OTHER, '--set', 'show=x'], 'did you mean shows?'],
    ['the place is another kind’s', ['?', ...OTHER, '--as', 'spectra.red'], 'it can under: otherFiles'],
  ])('where %s', async (_, args, complaint) => {
    const path = file('notes.txt', 'as read\n');
    const { code, error } = await run([...args.map((it) => (it === '?' ? path : it)), '--yes']);
    expect(code).toBe(1);
    expect(error).toContain(complaint);
  });

  test('where the check refuses it, which is said before anybody is asked', async () => {
    const { code, error, asked } = await run([file('page.html', '<p>'), ...OTHER], ['y']);
    expect(code).toBe(1);
    expect(error).toContain('ends in .csv');
    expect(asked).toEqual([]);
  });

  test('where the answer is no, and where it was only to be shown', async () => {
    expect((await run([file('notes.txt', 'x'), ...OTHER], ['n'])).code).toBe(1);
    const shown = await run([file('notes.txt', 'x'), ...OTHER, '--dry-run', '--json']);
    expect(shown.code).toBe(0);
    expect(JSON.parse(shown.out)).toMatchObject({
      written: false,
      imports: [{ kind: 'other', panel: 'plover', session: '2026-10-01', field: 'otherFiles', copied_as: 'notes.txt' }],
    });
  });
});

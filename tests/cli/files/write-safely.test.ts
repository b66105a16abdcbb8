/** Changes are made all or none, checked before, and never over what somebody else has changed. */
import {
  chmodSync,
  existsSync,
  mkdirSync,
  readFileSync,
  renameSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { readText } from '../../../src/cli/files/changes.ts';
import { newProblems } from '../../../src/cli/files/check-changes.ts';
import { ChangedMeanwhile, writeSafely } from '../../../src/cli/files/write-safely.ts';
import { editContent } from '../../../src/content/edit/edit-content.ts';
import { ContentError } from '../../../src/content/read/problem-list.ts';
import { type ContentFolder, TODAY, tinyContent } from '../../support/content-folder.ts';

const PLOVER = 'panels/plover/index.md';
let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
});
afterEach(() => content.delete());

const change = (paid: number, date = '2026-11-20', before = readText(content.folder, PLOVER)) => ({
  path: PLOVER,
  before,
  after: editContent(before, PLOVER, [{ do: 'insert', list: ['prices'], item: { date, paid, currency: 'EUR' } }]),
});

test('writes, keeps the file’s rights, and leaves nothing behind', async () => {
  const file = join(content.folder, PLOVER);
  chmodSync(file, 0o640);
  const wanted = change(199);
  await writeSafely(content.folder, { files: [wanted] }, TODAY);
  expect(readFileSync(file, 'utf8')).toBe(wanted.after);
  expect(statSync(file).mode & 0o777).toBe(0o640);
  expect(existsSync(join(content.folder, '.edits'))).toBe(false);
});

test('content that the check refuses is not written', async () => {
  const before = readText(content.folder, PLOVER);
  const wrong = change(-5);
  await expect(writeSafely(content.folder, { files: [wrong] }, TODAY)).rejects.toThrow(ContentError);
  expect(readText(content.folder, PLOVER)).toBe(before);
  // Of another file, too: a maker that is still named.
  const gone = {
    path: 'makers/wrackline.yaml',
    before: readText(content.folder, 'makers/wrackline.yaml'),
    after: undefined,
  };
  const problems = newProblems(content.folder, { files: [gone] }, TODAY);
  expect(problems.map((it) => it.field)).toContain('maker');
  expect(existsSync(join(content.folder, gone.path))).toBe(true);
});

test('what was refused before stands in nobody’s way, wherever its line has moved to', async () => {
  content.edit(PLOVER, 'width: 20 cm', 'width: 20 kg');
  expect(newProblems(content.folder, { files: [] }, TODAY)).toEqual([]);
  await writeSafely(content.folder, { files: [change(199)] }, TODAY);
  expect(readText(content.folder, PLOVER)).toContain('paid: 199');
  await expect(writeSafely(content.folder, { files: [change(-5, '2026-11-21')] }, TODAY)).rejects.toThrow(/paid/);
});

test('a file that has changed since it was read is left as it is', async () => {
  const old = change(199);
  content.edit(PLOVER, 'width: 20 cm', 'width: 21 cm');
  const byHand = readText(content.folder, PLOVER);
  await expect(writeSafely(content.folder, { files: [old] }, TODAY)).rejects.toThrow(ChangedMeanwhile);
  expect(readText(content.folder, PLOVER)).toBe(byHand);
  const made = { path: PLOVER, before: undefined, after: 'x' };
  await expect(writeSafely(content.folder, { files: [made] }, TODAY)).rejects.toThrow(ChangedMeanwhile);
});

describe('moves', () => {
  test('come first, and the files in them are edited at their new place', async () => {
    const { before } = change(1);
    const files = [{ ...change(199), path: 'panels/dunlin/index.md' }];
    writeFileSync(join(content.folder, 'panels/plover/front.jpg'), 'raw');
    await writeSafely(content.folder, { moves: [{ from: 'panels/plover', to: 'panels/dunlin' }], files }, TODAY);
    expect(existsSync(join(content.folder, 'panels/plover'))).toBe(false);
    expect(readText(content.folder, 'panels/dunlin/index.md')).not.toBe(before);
    expect(readFileSync(join(content.folder, 'panels/dunlin/front.jpg'), 'utf8')).toBe('raw');
  });

  test('never take the place of what is there', async () => {
    const moves = [{ from: 'panels/plover', to: 'panels/teasel' }];
    await expect(writeSafely(content.folder, { moves, files: [] }, TODAY)).rejects.toThrow('is there already');
  });
});

test('what a link leads to is changed, and the link stays', async () => {
  const file = join(content.folder, PLOVER);
  const real = join(content.folder, '.elsewhere', 'index.md');
  mkdirSync(join(content.folder, '.elsewhere'));
  renameSync(file, real);
  symlinkSync(real, file);
  const wanted = change(199);
  await writeSafely(content.folder, { files: [wanted] }, TODAY);
  expect(readFileSync(real, 'utf8')).toBe(wanted.after);
  expect(readFileSync(file, 'utf8')).toBe(wanted.after);
});

test('a folder that can’t be written is one line', async () => {
  writeFileSync(join(content.folder, '.edits'), 'a file in the way');
  await expect(writeSafely(content.folder, { files: [change(199)] }, TODAY)).rejects.toThrow(
    /can't be written: .*Nothing was changed\.$/,
  );
});

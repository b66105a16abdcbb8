/** New files are written all or none, and never over what is there. */
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { writeNew, writeNewFile } from '../../../src/cli/files/write-new.ts';
import { UsageError } from '../../../src/content/read/usage-error.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'write-new-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

test('files are written with the folders that they need', () => {
  writeNew(
    join(folder, 'a/b'),
    new Map([
      ['c/one.txt', 'one'],
      ['two.txt', 'two'],
    ]),
  );
  expect(readFileSync(join(folder, 'a/b/c/one.txt'), 'utf8')).toBe('one');
  expect(readFileSync(join(folder, 'a/b/two.txt'), 'utf8')).toBe('two');
});

test('where one of them can’t be written none is left, and the reason is said in words', () => {
  // The second needs a folder where the first is a file.
  const files = new Map([
    ['new/one.txt', 'one'],
    ['new/one.txt/two.txt', 'two'],
  ]);
  expect(() => writeNew(folder, files)).toThrow(UsageError);
  expect(() => writeNew(folder, files)).toThrow(/a file lies where a folder is needed .*Nothing was written\.$/);
  expect(readdirSync(folder)).toEqual([]);
});

test('what is there stays, and so do its neighbours', () => {
  writeFileSync(join(folder, 'mine.txt'), 'mine');
  expect(() =>
    writeNew(
      folder,
      new Map([
        ['new.txt', 'new'],
        ['mine.txt', 'yours'],
      ]),
    ),
  ).toThrow('mine.txt is there already');
  expect(() => writeNewFile(join(folder, 'mine.txt'), 'yours')).toThrow('is there already');
  expect(readFileSync(join(folder, 'mine.txt'), 'utf8')).toBe('mine');
  expect(existsSync(join(folder, 'new.txt'))).toBe(false);
});

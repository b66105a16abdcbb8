import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { writeFiles } from '../../src/build/write-files.ts';
import type { PublishedFile } from '../../src/site/export/published-file.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'panel-ledger-files-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

const file = (path: string, pieces: Iterable<string>): PublishedFile => ({
  path,
  type: 'text/csv',
  text: () => pieces,
});
const written = (path: string) => readFileSync(join(folder, path), 'utf8');

test('writes the pieces one after another, in folders that it makes', async () => {
  await writeFiles([file('data/a.csv', ['ä', '', 'b\n']), file('data/deep/er/b.csv', ['1'])], folder);
  expect(written('data/a.csv')).toBe('äb\n');
  expect(written('data/deep/er/b.csv')).toBe('1');
});

test('a file of no pieces is empty, and what stood there before is gone', async () => {
  writeFileSync(join(folder, 'old.csv'), 'longer than nothing');
  await writeFiles([file('old.csv', [])], folder);
  expect(written('old.csv')).toBe('');
});

test('asks for a piece only when those before it are being written, and loses none of many', async () => {
  let most = 0;
  function* pieces() {
    for (let i = 0; i < 3000; i++) {
      most = Math.max(most, i * 1000 - statSync(join(folder, 'long.csv')).size);
      yield `${`${i}`.padStart(999, ' ')}\n`;
    }
  }
  await writeFiles([file('long.csv', pieces())], folder);
  const lines = written('long.csv').trimEnd().split('\n');
  expect(lines).toHaveLength(3000);
  expect(lines.map(Number)).toEqual(Array.from({ length: 3000 }, (_, i) => i));
  // Three million characters in all; a third of them at most were held.
  expect(most).toBeLessThan(1_100_000);
});

test('says which folder can’t be written to', async () => {
  writeFileSync(join(folder, 'data'), 'a file in the way');
  await expect(writeFiles([file('data/a.csv', ['x'])], folder)).rejects.toThrow(/data/);
});

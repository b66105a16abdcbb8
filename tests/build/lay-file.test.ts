import { existsSync, linkSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { keptPages } from '../../src/build/kept-pages.ts';
import { layFile } from '../../src/build/lay-file.ts';
import { writeNew } from '../../src/build/write-new.ts';

let folder: string;
const at = (path: string) => join(folder, path);
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'lay-file-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

const pagesOf = (kept: string | undefined, made: { bytes: Uint8Array; file?: string }) =>
  ({ keptFile: () => kept, made: async () => made }) as unknown as ReturnType<typeof keptPages>;

test('a page is a link to what is kept, in a folder that is made for it', async () => {
  writeFileSync(at('kept'), 'a page');
  const none = { bytes: Buffer.from('') };
  const wherever = async () => none.bytes;
  await layFile(pagesOf(at('kept'), none), '/a/', at('site/a/deep/index.html'), wherever);
  await layFile(pagesOf(undefined, { ...none, file: at('kept') }), '/b/', at('site/b/index.html'), wherever);
  for (const it of ['site/a/deep/index.html', 'site/b/index.html'])
    expect(statSync(at(it)).ino).toBe(statSync(at('kept')).ino);
});

test('one that is not kept is written', async () => {
  await layFile(pagesOf(undefined, { bytes: Buffer.from('ä') }), '/plan/', at('site/plan/index.html'), async () =>
    Buffer.from(''),
  );
  expect(readFileSync(at('site/plan/index.html'), 'utf8')).toBe('ä');
});

test('says what can’t be written', async () => {
  const gone = pagesOf(at('gone'), { bytes: Buffer.from('') });
  await expect(layFile(gone, '/a/', at('site/a/index.html'), async () => Buffer.from(''))).rejects.toThrow(
    /ENOENT.*gone/,
  );
  writeFileSync(at('file'), '');
  const made = pagesOf(undefined, { bytes: Buffer.from('') });
  await expect(layFile(made, '/a/', at('file/index.html'), async () => Buffer.from(''))).rejects.toThrow(
    /ENOTDIR.*file/,
  );
});

test('what is written anew leaves what was published as it is', () => {
  mkdirSync(at('published'));
  writeFileSync(at('kept'), 'before');
  linkSync(at('kept'), at('published/page'));
  const { size } = writeNew(at('kept'), (open) => writeFileSync(open, 'after it'));
  expect(size).toBe(8);
  expect(readFileSync(at('kept'), 'utf8')).toBe('after it');
  expect(readFileSync(at('published/page'), 'utf8')).toBe('before');
  expect(() => writeNew(at('none/kept'), () => {})).toThrow(/ENOENT/);
  expect(existsSync(at('none'))).toBe(false);
});

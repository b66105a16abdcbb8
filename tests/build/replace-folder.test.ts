import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { replaceFolder } from '../../src/build/replace-folder.ts';
import { MEMORY } from '../support/disk-in-memory.ts';

/** Temporary files may lie in memory, which is a disk of its own. Where there is but one disk, only one is tested. */
const other = [MEMORY, fileURLToPath(new URL('../../.build', import.meta.url))].find(
  (it) => existsSync(it) && statSync(it).dev !== statSync(tmpdir()).dev,
);

describe.each([['on the same disk', tmpdir()], ...(other ? [['on another disk', other]] : [])])('%s', (_, place) => {
  let finished: string;
  let target: string;
  beforeEach(() => {
    finished = join(mkdtempSync(join(tmpdir(), 'finished-')), 'site');
    target = join(mkdtempSync(join(place ?? '', 'target-')), 'dist');
    mkdirSync(join(finished, 'deep'), { recursive: true });
    writeFileSync(join(finished, 'deep/new.html'), 'new');
  });
  afterEach(() => {
    for (const it of [finished, target]) rmSync(dirname(it), { recursive: true, force: true });
  });

  const isThere = () => {
    expect(readdirSync(target, { recursive: true })).toEqual(['deep', 'deep/new.html'].slice(0, 2));
    expect(readFileSync(join(target, 'deep/new.html'), 'utf8')).toBe('new');
    expect(readdirSync(dirname(target))).toEqual(['dist']);
    expect(existsSync(finished)).toBe(false);
  };

  test('where nothing was', async () => {
    await replaceFolder(finished, target);
    isThere();
  });

  test('in the place of another, whatever a build that was stopped has left beside it', async () => {
    for (const it of [target, `${target}.old`, `${target}.new`]) {
      mkdirSync(it);
      writeFileSync(join(it, 'old.html'), 'old');
    }
    await replaceFolder(`${finished}/`, `${target}/`);
    isThere();
  });

  test('what can’t be moved leaves the old one', async () => {
    mkdirSync(target);
    writeFileSync(join(target, 'old.html'), 'old');
    rmSync(finished, { recursive: true });
    await expect(replaceFolder(finished, target)).rejects.toThrow();
    expect(readdirSync(target)).toEqual(['old.html']);
    expect(readdirSync(dirname(target))).toEqual(['dist']);
  });
});

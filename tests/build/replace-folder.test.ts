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
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { replaceFolder } from '../../src/build/replace-folder.ts';

/** In memory, and so a disk of its own; where there is none, only one disk is tested. */
const MEMORY = '/dev/shm';
const hasOther = existsSync(MEMORY) && statSync(MEMORY).dev !== statSync(tmpdir()).dev;

describe.each([['on the same disk', tmpdir()], ...(hasOther ? [['on another disk', MEMORY]] : [])])(
  '%s',
  (_, place) => {
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
  },
);

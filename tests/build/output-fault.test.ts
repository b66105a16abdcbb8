/** An output that can't be written is told in one line. As root, permissions bind nobody: files stand in the way. */
import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { ensureWritable, outputFault } from '../../src/build/output-fault.ts';
import { UsageError } from '../../src/content/read/usage-error.ts';

let top: string;
beforeEach(() => {
  top = mkdtempSync(join(tmpdir(), 'output-fault-'));
});
afterEach(() => rmSync(top, { recursive: true }));

const at = (name: string) => join(top, name);

describe('before a build', () => {
  test('folders that can be made or written pass', () => {
    ensureWritable(at('dist'), at('.build'));
    mkdirSync(at('dist'));
    ensureWritable(at('dist'), at('.build'));
  });

  test.each([
    ['a file in the way of the output', 'dist'],
    ['a file in the way of the folder in which a build grows', '.build'],
  ])('%s', (_name, file) => {
    writeFileSync(at(file), '');
    expect(() => ensureWritable(at('dist'), at('.build'))).toThrow(
      `${at(file)} can't be written: a file lies where a folder is needed`,
    );
  });

  test('a folder with other things than a guide is left alone; an empty one, and a guide, are not', () => {
    mkdirSync(at('letters'));
    ensureWritable(at('letters'), at('.build'));
    writeFileSync(at('letters/to-the-bank.txt'), '');
    expect(() => ensureWritable(at('letters'), at('.build'))).toThrow(
      `${at('letters')} holds other things than a built guide, and they would be lost. Nothing was built: name an empty or a new folder.`,
    );
    mkdirSync(at('dist/data'), { recursive: true });
    writeFileSync(at('dist/index.html'), '');
    ensureWritable(at('dist'), at('.build'));
  });

  test('an output below a folder that is not there, which may be a slip of the keys', () => {
    expect(() => ensureWritable(at('no/where'), at('.build'))).toThrow(
      `${at('no/where')} can't be written: there is no folder ${at('no')}. Nothing was built: make it first, or name another place.`,
    );
  });

  test.skipIf(!existsSync('/proc/self'))('a place that is writable in name only', () => {
    expect(() => ensureWritable('/proc/site', at('.build'))).toThrow(UsageError);
    expect(existsSync(at('.build'))).toBe(false);
  });

  test('leaves nothing beside the output', () => {
    ensureWritable(at('dist'), at('.build'));
    expect(readdirSync(top)).toEqual(['.build']);
  });

  test('an output under a file', () => {
    writeFileSync(at('site'), '');
    expect(() => ensureWritable(at('site/dist'), at('.build'))).toThrow(UsageError);
  });
});

describe('during a build', () => {
  const fault = (code: string, more: object = {}) => Object.assign(new Error(code), { code, ...more });

  test('what the disk says of the output is one line without a trace', () => {
    const found = outputFault(fault('EROFS', { path: at('dist/index.html') }), [at('dist')]);
    expect(found).toBeInstanceOf(UsageError);
    expect(found?.message).toBe(
      `${at('dist/index.html')} can't be written: the disk is read-only (EROFS). Nothing was built.`,
    );
    expect(found?.stack).toBe(found?.message);
  });

  test('the target of a renaming counts as well', () => {
    const error = fault('EXDEV', { path: '/elsewhere/a', dest: at('dist') });
    expect(outputFault(error, [at('dist')])?.message).toContain('it lies on another disk');
  });

  test('a full disk is told where no place is', () => {
    expect(outputFault(fault('ENOSPC'), [at('dist')])?.message).toContain('the disk is full');
  });

  test.each([
    ['of another folder', fault('EACCES', { path: '/elsewhere/a' })],
    ['of a folder whose name only starts alike', fault('EACCES', { path: '/elsewhere/dist-old/a' })],
    ['without a place', fault('EACCES')],
    ['of another kind', fault('ERR_MODULE_NOT_FOUND', { path: '/elsewhere/dist/a' })],
    ['of the program', new TypeError('undefined is no function')],
  ])('a fault %s keeps its trace', (_name, error) => {
    expect(outputFault(error, ['/elsewhere/dist'])).toBeUndefined();
  });
});

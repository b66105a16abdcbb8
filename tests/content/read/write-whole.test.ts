/** A file that is written whole takes its name at the end, and leaves nothing beside it. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { writeWhole } from '../../../src/content/read/write-whole.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'panel-ledger-whole-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

test('makes its folder, and takes the place of what was there', () => {
  const file = join(folder, 'a/b/it.json');
  writeWhole(file, 'one');
  writeWhole(file, Buffer.from('two'));
  expect(readFileSync(file, 'utf8')).toBe('two');
  expect(readdirSync(join(folder, 'a/b'))).toEqual(['it.json']);
});

test('what fails half-way leaves the former file', () => {
  const file = join(folder, 'it.json');
  writeWhole(file, 'one');
  const fails = (draft: string) => {
    writeFileSync(draft, 'tw');
    expect(readFileSync(file, 'utf8')).toBe('one');
    throw new Error('the disk is full');
  };
  expect(() => writeWhole(file, fails)).toThrow('the disk is full');
  expect(readFileSync(file, 'utf8')).toBe('one');
  expect(readdirSync(folder)).toEqual(['it.json']);
});

import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { clearPiled } from '../../src/build/compile-cache.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'compiled-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const fill = (count: number) => {
  mkdirSync(join(folder, 'v1'));
  for (let i = 0; i < count; i++) writeFileSync(join(folder, 'v1', `${i}`), '');
};

test('what has piled up beyond the bound is cleared, all else stays', () => {
  fill(12);
  clearPiled(folder, 12);
  expect(readdirSync(join(folder, 'v1'))).toHaveLength(12);
  clearPiled(folder, 11);
  expect(readdirSync(tmpdir())).not.toContain(folder.split('/').at(-1));
});

test('where there is none yet, nothing happens', () => {
  expect(() => clearPiled(join(folder, 'nowhere'), 1)).not.toThrow();
});

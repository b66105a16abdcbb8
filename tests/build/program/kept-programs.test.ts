/** Programs are kept whole or not at all, and not for ever. */
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { draftOf, forgetProgram, keepProgram, keptProgram, PARTS } from '../../../src/build/program/kept-programs.ts';

const { cache } = vi.hoisted(() => ({ cache: { folder: '' } }));
vi.mock('../../../src/content/read/cache-folder.ts', () => ({ cacheFolder: () => cache.folder }));

beforeEach(() => {
  cache.folder = mkdtempSync(join(tmpdir(), 'panel-ledger-programs-'));
});
afterEach(() => rmSync(cache.folder, { recursive: true, force: true }));

const STYLES = [['index', { styles: [{ depth: 0, order: 0 }] }]];

function grow(key: string, left: readonly string[] = []): string {
  const draft = draftOf(key);
  for (const [name, text] of [
    [`${PARTS.server}/prerender-entry.Ab12.mjs`, `export const app = '${key}';`],
    [`${PARTS.assets}/style.css`, 'p {}'],
    [PARTS.styles, JSON.stringify(STYLES)],
  ] as const) {
    if (left.includes(name)) continue;
    mkdirSync(dirname(join(draft, name)), { recursive: true });
    writeFileSync(join(draft, name), text);
  }
  return draft;
}

test('one that is kept is there under its name, and gone when it is forgotten', () => {
  expect(keptProgram('one')).toBeUndefined();
  const draft = grow('one');
  expect(keptProgram('one')).toBeUndefined();
  keepProgram(draft, 'one');
  const kept = keptProgram('one');
  expect(kept?.styles).toEqual(STYLES);
  expect(readFileSync(kept?.entry ?? '', 'utf8')).toContain("'one'");
  expect(readFileSync(join(kept?.assets ?? '', 'style.css'), 'utf8')).toBe('p {}');
  expect(existsSync(draft)).toBe(false);
  forgetProgram('one');
  expect(keptProgram('one')).toBeUndefined();
});

test.each([`${PARTS.server}/prerender-entry.Ab12.mjs`, PARTS.styles])('without %s there is none', (part) => {
  keepProgram(grow('one', [part]), 'one');
  expect(keptProgram('one')).toBeUndefined();
});

test('it takes the place of one of its name, and the longest unused goes', () => {
  [...'abcdef'].forEach((key, i) => {
    keepProgram(grow(key), key);
    const then = new Date(Date.UTC(2026, 0, 1, i));
    utimesSync(join(cache.folder, 'programs', key), then, then);
  });
  // Asked for, it is in use.
  expect(keptProgram('a')).toBeDefined();
  keepProgram(grow('g'), 'g');
  expect([...'abcdefg'].filter((it) => keptProgram(it))).toEqual([...'acdefg']);
  keepProgram(grow('g'), 'g');
  expect(keptProgram('g')).toBeDefined();
});

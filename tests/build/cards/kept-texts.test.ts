/** Badges are laid as links to what is kept of them, and made again where somebody has written into one. */
import { appendFileSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test, vi } from 'vitest';
import { keptTexts } from '../../../src/build/cards/kept-texts.ts';

const place = vi.hoisted(() => ({ folder: '' }));
vi.mock('../../../src/content/read/cache-folder.ts', () => ({ cacheFolder: () => place.folder }));

place.folder = mkdtempSync(join(tmpdir(), 'kept-texts-'));
afterAll(() => rmSync(place.folder, { recursive: true }));

const at = (path: string) => join(place.folder, path);

/** Lays files as a build would, each with its text. */
function build(site: string, texts: Record<string, string>): void {
  const kept = keptTexts();
  for (const [path, text] of Object.entries(texts)) kept.lay(at(`${site}/${path}`), text);
  kept.close();
}
const inode = (path: string) => statSync(at(path)).ino;

test('the same text is one file, whatever build lays it; another text is another one', () => {
  build('one', { 'a/x.svg': '<svg>1</svg>', 'b/x.svg': '<svg>2</svg>' });
  build('two', { 'a/x.svg': '<svg>1</svg>', 'b/x.svg': '<svg>3</svg>', 'b/x.html': '<p>1</p>' });
  expect(inode('two/a/x.svg')).toBe(inode('one/a/x.svg'));
  expect(inode('two/b/x.svg')).not.toBe(inode('one/b/x.svg'));
  for (const [path, text] of [
    ['one/b/x.svg', '<svg>2</svg>'],
    ['two/b/x.svg', '<svg>3</svg>'],
    ['two/b/x.html', '<p>1</p>'],
  ] as const)
    expect(readFileSync(at(path), 'utf8')).toBe(text);
  expect(readdirSync(at('badges'))).toHaveLength(4);
});

test('what somebody has written into is made again', () => {
  build('three', { 'a/x.svg': '<svg>9</svg>' });
  appendFileSync(at('three/a/x.svg'), 'x');
  build('four', { 'a/x.svg': '<svg>9</svg>' });
  expect(readFileSync(at('four/a/x.svg'), 'utf8')).toBe('<svg>9</svg>');
});

test('a guide without badges has no such folder', () => {
  rmSync(at('badges'), { recursive: true });
  build('five', {});
  expect(readdirSync(place.folder)).not.toContain('badges');
});

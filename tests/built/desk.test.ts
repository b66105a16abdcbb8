/** What the tester alone sees while writing is in no build. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { DESK_PAGES } from '../../src/build/dev/desk-routes.ts';
import { DEMO_SITE } from '../support/demo-folder.ts';
import { fingerprints } from './build.ts';

test('no page, no bar, no script of the desk is published', () => {
  const files = Object.keys(fingerprints(DEMO_SITE));
  expect(files.length).toBeGreaterThan(50);
  expect(files.filter((it) => it.startsWith('desk') || it.startsWith('_desk'))).toEqual([]);
  const texts = files.filter((it) => /\.(html|js|css|json)$/.test(it) && !it.startsWith('pagefind/'));
  const marks = [...Object.keys(DESK_PAGES), 'desk-bar', 'desk-problems', 'told-sections', '/desk/content.json'];
  const found = texts.filter((it) => {
    const text = readFileSync(join(DEMO_SITE, it), 'utf8');
    return marks.some((mark) => text.includes(mark));
  });
  expect(found).toEqual([]);
});

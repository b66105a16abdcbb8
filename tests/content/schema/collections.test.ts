import { globSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { COLLECTIONS, entryId } from '../../../src/content/schema/collections.ts';
import { DEMO_FOLDER } from '../../support/demo-folder.ts';

describe('entryId', () => {
  test.each([
    ['guide.yaml', 'guide'],
    ['makers/wrackline.yaml', 'wrackline'],
    ['panels/plover/index.md', 'plover'],
    ['panels/plover/index.mdx', 'plover'],
    ['methods/optical-power.mdx', 'optical-power'],
    ['cautions.mdx', 'cautions'],
    ['makers/a.b.yaml', 'a.b'],
  ])('%s is %s', (path, id) => {
    expect(entryId(path)).toBe(id);
  });
});

test('every file of the demo content that a tester writes belongs to one collection', () => {
  const written = globSync('**/*.{yaml,md,mdx}', { cwd: DEMO_FOLDER }).toSorted();
  const read = Object.values(COLLECTIONS).flatMap((it) => globSync(it.pattern, { cwd: DEMO_FOLDER }));
  expect(read.toSorted()).toEqual(written);
});

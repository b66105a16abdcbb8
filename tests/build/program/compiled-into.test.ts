/** A page that can't be rendered is told with the tester's file that may be at fault, and with no other. */
import { afterEach, beforeEach, expect, test } from 'vitest';
import { compiledInto } from '../../../src/build/program/compiled-into.ts';
import { PageFault } from '../../../src/build/program/page-fault.ts';
import { type ContentFolder, tinyContent } from '../../support/content-folder.ts';

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
});
afterEach(() => content.delete());

const of = (page: string) => compiledInto(page, { content: content.content() });

test('notes in MDX and a method’s text of one’s own are named; plain notes and the product’s texts are not', () => {
  expect(of('/panels/plover/')).toBeUndefined();
  expect(of('/methods/optical-power/')).toBeUndefined();
  expect(of('/panels/')).toBeUndefined();
  expect(of('/methods/rank/')).toMatch(/methods\/rank\.mdx$/);
  const text = content.read('panels/plover/index.md');
  content.remove('panels/plover/index.md');
  content.write('panels/plover/index.mdx', text);
  expect(of('/panels/plover/')).toMatch(/panels\/plover\/index\.mdx$/);
  // Its calculation has none of its text.
  expect(of('/panels/plover/methodology/')).toBeUndefined();
});

test('it says which page, of which file, and why', () => {
  const cause = new Error('no such component');
  const fault = new PageFault('/panels/plover/', 'content/panels/plover/index.mdx', cause);
  expect(fault.message).toBe(
    'The page /panels/plover/ can’t be made of content/panels/plover/index.mdx: no such component',
  );
  expect(fault.trace).toMatch(/^ +at /);
  expect(new PageFault('/', undefined, 'why').message).toBe('The page / can’t be made: why');
});

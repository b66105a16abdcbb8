import { afterEach, beforeEach, expect, test } from 'vitest';
import { type ContentFolder, tinyContent } from '../../support/content-folder.ts';
import { expectProblems } from './expect-problems.ts';

const PLOVER = 'panels/plover/index.md';
const TEASEL = 'panels/teasel/index.md';

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
});
afterEach(() => content.delete());

const named = (file: string, names: string) => content.edit(file, 'status:', `formerly: ${names}\nstatus:`);

test('names of before are no problem', () => {
  named(PLOVER, '[dotterel, dotterel-2]');
  named(TEASEL, '[thistle]');
  expect(content.problems()).toEqual([]);
});

test('a name that is somebody’s now leads nowhere else', () => {
  named(PLOVER, '[teasel]');
  expectProblems(content.problems(), {
    file: PLOVER,
    line: content.lineOf(PLOVER, 'formerly'),
    field: 'formerly[0]',
    found: '"teasel"',
    wanted: 'a name that no panel has now; content/panels/teasel/index.md has it',
    hint: 'take it out',
  });
});

test('nor its own', () => {
  named(PLOVER, '[plover]');
  expect(content.problems()).toMatchObject([{ found: '"plover"', wanted: 'a name that this panel no longer has' }]);
});

test('a name leads to one panel', () => {
  named(PLOVER, '[dotterel]');
  named(TEASEL, '[dotterel]');
  expect(content.problems()).toMatchObject([
    { file: `content/${TEASEL}`, wanted: `a name that stands here alone; content/${PLOVER} has it too` },
  ]);
});

test('is a part of an address', () => {
  named(PLOVER, '[Grey Dotterel]');
  expect(content.problems()).toMatchObject([{ field: 'formerly[0]', wanted: /^lower-case letters, digits/ }]);
});

test('makers have names of before too', () => {
  content.write('makers/knotgrass.yaml', 'name: Knotgrass\nformerly: [wrackline]\n');
  expect(content.problems()).toMatchObject([{ file: 'content/makers/knotgrass.yaml', found: '"wrackline"' }]);
});

test('a link to an old address is told the new one', () => {
  named(PLOVER, '[dotterel]');
  content.write(TEASEL, `${content.read(TEASEL)}\nLike [the other](/panels/dotterel/methodology/).\n`);
  expect(content.problems()).toMatchObject([
    { hint: 'write "/panels/plover/methodology/": the panel has that name now' },
  ]);
});

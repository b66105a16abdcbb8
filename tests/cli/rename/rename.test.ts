import { existsSync, globSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { renameCommand } from '../../../src/cli/rename/rename.ts';
import { renamedBody } from '../../../src/cli/rename/renamed-links.ts';
import { type ContentFolder, tinyContent } from '../../support/content-folder.ts';
import { runCommand } from '../run-command.ts';

const PLOVER = 'panels/plover/index.md';
const TEASEL = 'panels/teasel/index.md';

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
});
afterEach(() => content.delete());

const rename = async (args: string[], answer?: string) => {
  const { out, error, code } = await runCommand(
    renameCommand,
    args,
    content.folder,
    answer === undefined ? undefined : [answer],
  );
  return { said: out, complained: error.replace(/\n$/, ''), code };
};

const everything = () =>
  new Map(
    globSync('**/*.*', { cwd: content.folder })
      .toSorted()
      .map((path) => [path, content.read(path)]),
  );

describe('a panel’s other name', () => {
  test('moves its folder, is told in it, and is followed by links; every other byte stays', async () => {
    content.write('panels/plover/front.txt', 'beside it');
    content.write(
      TEASEL,
      `${content.read(TEASEL)}\nSee [it](/panels/plover/methodology/#led-area "Plover"), and\n[both](/compare/?with=plover,teasel).\n`,
    );
    const before = everything();
    const { said, code } = await rename(['panel', 'plover', 'grey-plover', '--yes']);
    expect(code).toBe(0);
    const after = everything();
    expect(existsSync(join(content.folder, 'panels/plover'))).toBe(false);
    expect(after.get('panels/grey-plover/front.txt')).toBe('beside it');
    expect(after.get('panels/grey-plover/index.md')).toBe(
      before.get(PLOVER)?.replace(/^(status: .*\n)/m, '$1formerly: [plover]\n'),
    );
    expect(after.get(TEASEL)).toBe(
      before
        .get(TEASEL)
        ?.replace('/panels/plover/m', '/panels/grey-plover/m')
        .replace('with=plover,', 'with=grey-plover,'),
    );
    const others = (all: Map<string, string>) => [...all].filter(([path]) => !/plover|teasel/.test(path));
    expect(others(after)).toEqual(others(before));
    expect(said).toContain('/panels/plover/methodology/#led-area becomes');
    expect(content.problems()).toEqual([]);
  });

  test('and back again is the first name, with the other one of before', async () => {
    await rename(['panel', 'plover', 'grey-plover', '--yes']);
    await rename(['panel', 'grey-plover', 'plover', '--yes']);
    expect(content.read(PLOVER)).toContain('formerly: [grey-plover]');
    expect(content.problems()).toEqual([]);
  });

  test('is only shown with --dry-run, or after a no', async () => {
    const before = everything();
    expect((await rename(['panel', 'plover', 'grey-plover', '--dry-run'])).code).toBe(0);
    expect((await rename(['panel', 'plover', 'grey-plover'], 'n')).code).toBe(1);
    expect((await rename(['panel', 'plover', 'grey-plover'])).complained).toContain('add --yes');
    expect(everything()).toEqual(before);
  });
});

test('a maker’s other name is followed by the panels', async () => {
  const before = content.read(TEASEL);
  const { code } = await rename(['maker', 'knotgrass', 'knot-grass', '--yes']);
  expect(code).toBe(0);
  expect(content.read(TEASEL)).toBe(before.replace('maker: knotgrass', 'maker: knot-grass'));
  expect(content.read('makers/knot-grass.yaml')).toContain('formerly: [knotgrass]');
  expect(existsSync(join(content.folder, 'makers/knotgrass.yaml'))).toBe(false);
  expect(content.problems()).toEqual([]);
});

test.each([
  [['panel', 'plovr', 'x'], /^There is no panel "plovr"; did you mean plover\?/],
  [['panel', 'plover', 'teasel'], /"teasel" is a name that it has/],
  [['panel', 'plover', 'Grey Plover'], /takes lower-case letters/],
  [['panel', 'plover', 'plover'], /has that name already/],
  [['maker', 'plover', 'x'], /^There is no maker "plover"/],
])('%j is refused', async (args, complaint) => {
  const before = everything();
  const { complained, code } = await rename([...args, '--yes']);
  expect(complained).toMatch(complaint);
  expect(code).toBe(1);
  expect(everything()).toEqual(before);
});

test('a name that another panel had before is taken', async () => {
  content.edit(TEASEL, 'status:', 'formerly: [thistle]\nstatus:');
  expect((await rename(['panel', 'plover', 'thistle', '--yes'])).complained).toMatch(
    /"thistle" is a name that it had before/,
  );
});

describe('links in a body', () => {
  const led = (body: string, path = 'panels/teasel/index.mdx') =>
    renamedBody(`---\na: 1\n---\n${body}`, path, { from: 'plover', to: 'dotterel' }).text.slice(13);

  test.each([
    ['[a](/panels/plover/)', '[a](/panels/dotterel/)'],
    ['[a](../plover/#limits)', '[a](../dotterel/#limits)'],
    [
      '<a href="/panels/plover/methodology/#peak-to-mean-2026-10-01">a</a>',
      '<a href="/panels/dotterel/methodology/#peak-to-mean-2026-10-01">a</a>',
    ],
    ['[a](/data/compare/plover.json)', '[a](/data/compare/dotterel.json)'],
    ['[a](/plan/?panel=plover&cm=30)', '[a](/plan/?panel=dotterel&cm=30)'],
    ['[a](/?own.plover=450&extra=21)', '[a](/?own.dotterel=450&extra=21)'],
    ['[a][1]\n\n[1]: /panels/plover/', '[a][1]\n\n[1]: /panels/dotterel/'],
    ['![a](../plover/front.png)', '![a](../dotterel/front.png)'],
    ['[a](/panels/plover/) and [a](/panels/plover/)', '[a](/panels/dotterel/) and [a](/panels/dotterel/)'],
  ])('%s follows', (before, after) => {
    expect(led(before)).toBe(after);
  });

  test.each([
    'The plover at /panels/plover/ in words.',
    '`[a](/panels/plover/)`',
    '[a](/panels/plover-2/)',
    '[a](https://plover.example/panels/plover/)',
    '[plover](/panels/teasel/#plover)',
  ])('%s stays', (body) => {
    expect(led(body)).toBe(body);
  });
});

/** Migrations in their order, and the format that guide.yaml states. */
import { globSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { formatOf, MIGRATIONS, upgraded } from '../../../src/content/migrations/index.ts';
import { FORMAT } from '../../../src/content/schema/format.ts';
import { type ContentFolder, tinyContent } from '../../support/content-folder.ts';

let folder: ContentFolder;
beforeEach(() => {
  folder = tinyContent();
});
afterEach(() => folder.delete());

const files = () =>
  new Map(
    globSync('**/*.{yaml,md,mdx}', { cwd: folder.folder }).map((it) => [
      it,
      readFileSync(join(folder.folder, it), 'utf8'),
    ]),
  );
const old = () => {
  const text = folder.read('instruments/thermopile.yaml');
  const single = text.replace('calibrations:', 'calibration:').replace(/^ {2}- /m, '    ');
  folder.write('instruments/thermopile.yaml', single);
};

test('every numbered file has its test, and its number is the format that it leads to', () => {
  const names = globSync('src/content/migrations/[0-9]*.ts')
    .map((it) => basename(it, '.ts'))
    .toSorted();
  const tests = globSync('tests/content/migrations/[0-9]*.test.ts')
    .map((it) => basename(it, '.test.ts'))
    .toSorted();
  expect(tests).toEqual(names);
  expect(names.map((it) => Number(it.slice(0, 4)))).toEqual(MIGRATIONS.map((it) => it.to));
  expect(Math.max(...MIGRATIONS.map((it) => it.to))).toBe(FORMAT);
});

describe('an older folder that the check refuses', () => {
  test('is mended, and is not touched again', () => {
    old();
    expect(folder.problems().map((it) => it.field)).toContain('calibration');
    const { from, files: changed } = upgraded(files());
    expect(from).toBe(1);
    for (const { path, after } of changed) {
      if (after === undefined) folder.remove(path);
      else folder.write(path, after);
    }
    expect(folder.problems()).toEqual([]);
    expect(folder.content().guide.data.format).toBe(FORMAT);
    expect(upgraded(files())).toEqual({ from: FORMAT, files: [] });
  });

  test('half done, is finished', () => {
    old();
    const { files: changed } = upgraded(files());
    const instrument = changed.find((it) => it.path === 'instruments/thermopile.yaml');
    folder.write('instruments/thermopile.yaml', instrument?.after ?? '');
    expect(upgraded(files()).files.map((it) => it.path)).toEqual(
      changed.map((it) => it.path).filter((it) => it !== 'instruments/thermopile.yaml'),
    );
  });
});

test('the format is 1 where none is stated or none can be read', () => {
  expect([undefined, '', 'title: x\n', 'format: two\n', 'format: 7\n'].map(formatOf)).toEqual([1, 1, 1, 1, 7]);
});

test('a stated format is raised where it stands, comment and all', () => {
  folder.write('guide.yaml', `# head\nformat: 1   # ours\n${folder.read('guide.yaml')}`);
  const guide = upgraded(files()).files.find((it) => it.path === 'guide.yaml');
  expect(guide?.after).toMatch(new RegExp(`^# head\nformat: ${FORMAT} {3}# ours\n`));
});

test('content of a later format is refused, with what to do', () => {
  folder.write('guide.yaml', `format: 9\n${folder.read('guide.yaml')}`);
  expect(folder.problems()).toEqual([
    expect.objectContaining({ field: 'format', hint: 'update the program: this content was written for a later one' }),
  ]);
});

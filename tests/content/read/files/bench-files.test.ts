import { createHash } from 'node:crypto';
import { mkdirSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type ContentFolder, tinyContent } from '../../../support/content-folder.ts';

const PLOVER = 'panels/plover/index.md';

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
});
afterEach(() => content.delete());

/** Names files in the Plover's session. */
function named(...names: string[]): void {
  const lines = names.map((it) => `\n      - { file: ${JSON.stringify(it)}, shows: Notes of the day }`).join('');
  content.edit(PLOVER, '\n---\n\nNotes', `\n    otherFiles:${lines}\n---\n\nNotes`);
}

describe('a file that a session names', () => {
  test('is read with its hash, its place and the day', () => {
    const bytes = 'as it was read\n';
    content.write('panels/plover/notes.txt', bytes);
    named('notes.txt');
    const [file, ...others] = content.content().benchFiles.get('plover')?.read ?? [];
    expect(others).toEqual([]);
    expect(file).toMatchObject({
      ...{ kind: 'other', name: 'notes.txt', date: '2026-10-01', field: ['otherFiles', 0], bytes: bytes.length },
      sha256: createHash('sha256').update(bytes).digest('hex'),
    });
  });

  test('has another hash as soon as it is another file', () => {
    content.write('panels/plover/notes.txt', 'one');
    named('notes.txt');
    const hash = () => content.content().benchFiles.get('plover')?.read[0]?.sha256;
    const before = hash();
    content.write('panels/plover/notes.txt', 'two');
    expect(hash()).not.toBe(before);
  });
});

describe('what can’t be read is told at its field', () => {
  const problem = () => {
    const [first, ...others] = content.problems();
    expect(others).toEqual([]);
    expect(first).toMatchObject({ file: `content/${PLOVER}`, field: 'sessions[0].otherFiles[0].file' });
    expect(first?.line).toBe(
      content
        .read(PLOVER)
        .split('\n')
        .findIndex((it) => it.includes('- { file:')) + 1,
    );
    return first;
  };

  test('a name that is not there, with the one that was meant', () => {
    content.write('panels/plover/notes.txt', 'x');
    named('note.txt');
    expect(problem()).toMatchObject({ found: '"note.txt"', hint: 'did you mean "notes.txt"?' });
  });

  test.each(['../../guide.yaml', 'raw/notes.txt', 'raw\\notes.txt', '..'])('a name with a folder: %s', (name) => {
    named(name);
    expect(problem()?.wanted).toBe('the name of a file beside this one, without a folder');
  });

  test('a link to another place', () => {
    symlinkSync(join(content.folder, 'guide.yaml'), join(content.folder, 'panels/plover/notes.txt'));
    named('notes.txt');
    expect(problem()?.hint).toContain('a link to another place');
  });

  test('a folder', () => {
    mkdirSync(join(content.folder, 'panels/plover/notes.txt'));
    named('notes.txt');
    expect(problem()?.wanted).toBe('a file that is there, beside this one');
  });

  test('an ending of another kind of file', () => {
    content.write('panels/plover/page.html', '<p>');
    named('page.html');
    expect(problem()?.wanted).toContain('ends in .csv');
  });

  test('a file that is too large, which is not read for that', () => {
    const path = join(content.folder, 'panels/plover/log.csv');
    writeFileSync(path, '');
    truncateSync(path, 300 * 1024 * 1024);
    named('log.csv');
    expect(problem()).toMatchObject({ found: '"log.csv" of 300 MB', wanted: 'a file of at most 256 MB' });
  });

  test('a picture that says where it was taken', () => {
    content.write('panels/plover/wall.jpg', WITH_PLACE);
    named('wall.jpg');
    expect(problem()?.found).toContain('where it was taken');
  });
});

test('each file is named once', () => {
  content.write('panels/plover/notes.txt', 'x');
  named('notes.txt', 'notes.txt');
  expect(content.problems()).toMatchObject([
    { field: 'sessions[0].otherFiles[1].file', wanted: 'another file: sessions[0].otherFiles[0].file names this one' },
  ]);
});

test('what looks like a meter’s file and is named nowhere is known', () => {
  content.write('panels/plover/run.csv', '1;2\n');
  content.write('panels/plover/front.pdf', 'x');
  expect(content.content().benchFiles.get('plover')?.unnamed).toEqual(['run.csv']);
});

/** The head of a JPEG as a telephone writes it: EXIF with an entry for the place (tag 0x8825), little end first. */
const WITH_PLACE = Buffer.concat([
  Buffer.from([0xff, 0xd8, 0xff, 0xe1, 0, 34]),
  Buffer.from('Exif\0\0', 'latin1'),
  Buffer.from([0x49, 0x49, 0x2a, 0, 8, 0, 0, 0, 1, 0, 0x25, 0x88, 4, 0, 1, 0, 0, 0, 26, 0, 0, 0, 0, 0, 0, 0]),
  Buffer.from([0xff, 0xd9]),
]);

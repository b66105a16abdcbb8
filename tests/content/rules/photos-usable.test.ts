/** Photos that can't be shown are problems with file, line, field and what to write instead. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { MOST_MEGABYTES, MOST_MEGAPIXELS } from '../../../src/content/rules/photos-usable.ts';
import { type ContentFolder, tinyContent } from '../../support/content-folder.ts';
import { cameraPhoto, plainPicture } from '../../support/photo-bytes.ts';
import { expectProblems } from './expect-problems.ts';

const PLOVER = 'panels/plover/index.md';

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
});
afterEach(() => content.delete());

const list = (...files: string[]) =>
  content.edit(
    PLOVER,
    'weight: 9 lb\n',
    `weight: 9 lb\nphotos:\n${files.map((it) => `  - { file: ${it}, shows: Front with its stand }\n`).join('')}`,
  );
const lay = (name: string, bytes: Uint8Array) => content.write(`panels/plover/${name}`, bytes);
const jpeg = () => plainPicture(60, 40).jpeg().toBuffer();

/** The problem of the first listed photo. */
const atFirst = (file: string) => ({
  file: PLOVER,
  line: content.lineOf(PLOVER, `  - { file: ${file}`),
  field: 'photos[0].file',
  found: `"${file}"`,
});

const ENDINGS = '.avif, .jpeg, .jpg, .png, .webp';
const EXPORT = 'export it anew as JPEG or PNG; another ending does not change what it is';

test('every format that is taken in stays silent, of a panel and of a session', async () => {
  lay('a.jpg', await jpeg());
  lay('b.JPEG', await cameraPhoto(60, 40));
  lay('c.png', await plainPicture(60, 40).png().toBuffer());
  lay('d.webp', await plainPicture(60, 40).webp().toBuffer());
  lay('e.avif', await plainPicture(60, 40).avif().toBuffer());
  lay('f.png', await jpeg());
  list('a.jpg', 'b.JPEG', 'c.png', 'd.webp', 'e.avif');
  content.edit(
    PLOVER,
    '    hotSpots: None seen.\n',
    '    hotSpots: None seen.\n    photos: [{ file: f.png, shows: Light on the wall, by: A member }]\n',
  );
  expectProblems(content.problems());
  const listed = content.content().photos.get('plover')?.listed;
  expect([...(listed?.values() ?? [])].map((it) => [it.width, it.height])).toEqual(Array(6).fill([60, 40]));
});

describe('a file', () => {
  test('that is not there, with the nearest name', async () => {
    lay('front.jpg', await jpeg());
    list('frnot.jpg');
    expectProblems(content.problems(), {
      ...atFirst('frnot.jpg'),
      wanted: 'a file that is there, beside this one',
      hint: 'did you mean "front.jpg"?',
    });
  });

  test('in another folder', () => {
    list('raw/front.jpg');
    expectProblems(content.problems(), {
      ...atFirst('raw/front.jpg'),
      wanted: 'the name of a file beside this one, without a folder',
    });
  });

  test('of a kind that is not taken in', () => {
    lay('front.svg', Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"/>'));
    list('front.svg');
    expectProblems(content.problems(), {
      ...atFirst('front.svg'),
      wanted: `a picture that ends in ${ENDINGS}`,
      hint: EXPORT,
    });
  });

  test('of such a kind under another ending', () => {
    lay('front.jpg', Buffer.from('\0\0\0\x18ftypheic\0\0\0\0', 'latin1'));
    list('front.jpg');
    expectProblems(content.problems(), {
      ...atFirst('front.jpg'),
      found: '"front.jpg", a HEIC inside',
      wanted: 'a JPEG, PNG, WebP or AVIF',
      hint: EXPORT,
    });
  });

  test('that is no picture but by its name', () => {
    lay('front.jpg', Buffer.from('Dear reader'));
    list('front.jpg');
    expectProblems(content.problems(), {
      ...atFirst('front.jpg'),
      wanted: `a picture: this file does not start like any of ${ENDINGS}`,
      hint: EXPORT,
    });
  });

  test('that breaks off in its head', async () => {
    lay('front.jpg', (await jpeg()).subarray(0, 12));
    list('front.jpg');
    expectProblems(content.problems(), {
      ...atFirst('front.jpg'),
      wanted: 'a picture whose size can be read: this file breaks off or is damaged',
      hint: EXPORT,
    });
  });

  test('of too many bytes', async () => {
    lay('front.jpg', Buffer.concat([await jpeg(), Buffer.alloc(MOST_MEGABYTES * 1e6)]));
    list('front.jpg');
    expectProblems(content.problems(), {
      ...atFirst('front.jpg'),
      found: '"front.jpg" of 25.0 MB',
      wanted: 'a picture of at most 25 MB',
      hint: 'readers get 1280 pixels across at most: save it smaller',
    });
  });

  test('of too many pixels', async () => {
    expect(MOST_MEGAPIXELS).toBe(100);
    const head = await plainPicture(60, 40).png().toBuffer();
    head.writeUInt32BE(10_000, 16);
    head.writeUInt32BE(10_001, 20);
    lay('front.png', head);
    list('front.png');
    expectProblems(content.problems(), {
      ...atFirst('front.png'),
      found: '"front.png" of 10000 × 10001 pixels',
      wanted: 'a picture of at most 100 megapixels',
      hint: 'readers get 1280 pixels across at most: save it smaller',
    });
  });

  test('that is listed twice', async () => {
    lay('front.jpg', await jpeg());
    list('front.jpg');
    content.edit(
      PLOVER,
      '    hotSpots: None seen.\n',
      '    hotSpots: None seen.\n    photos: [{ file: front.jpg, shows: Front once more }]\n',
    );
    expectProblems(content.problems(), {
      file: PLOVER,
      line: content.lineOf(PLOVER, '    photos: [{ file: front.jpg, shows: Front once'),
      field: 'sessions[0].photos[0].file',
      found: '"front.jpg"',
      wanted: 'another picture: photos[0].file names this one',
    });
  });
});

describe('what it shows', () => {
  test.each([
    ['front.jpg', 'the file’s name belongs to `file`'],
    ['Front', 'two words at least: `Back with its fan`'],
    ['- -', 'two words at least: `Back with its fan`'],
  ])('%s says too little', async (shows, hint) => {
    lay('a.jpg', await jpeg());
    content.edit(PLOVER, 'weight: 9 lb\n', `weight: 9 lb\nphotos:\n  - file: a.jpg\n    shows: '${shows}'\n`);
    expectProblems(content.problems(), {
      file: PLOVER,
      line: content.lineOf(PLOVER, '    shows:'),
      field: 'photos[0].shows',
      found: `"${shows}"`,
      wanted: /words that tell somebody who can’t see it what is on the picture/,
      hint,
    });
  });

  test('is needed, and other fields are refused', async () => {
    lay('a.jpg', await jpeg());
    content.edit(PLOVER, 'weight: 9 lb\n', 'weight: 9 lb\nphotos:\n  - { file: a.jpg, alt: Front on a stand }\n');
    expect(content.problems().map((it) => it.field)).toEqual(
      expect.arrayContaining(['photos[0].shows', 'photos[0].alt']),
    );
  });
});

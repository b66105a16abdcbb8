import { describe, expect, test } from 'vitest';
import { PHOTOS } from '../../../../src/content/schema/photo.ts';
import { type BenchStore, BenchStoreError, type StoredPhoto } from '../../../../src/site/bench/browser/bench-store.ts';
import { PHOTO_ACCEPT, photoName, takePhotos } from '../../../../src/site/bench/browser/camera-photo.ts';

const RUN = {
  id: 'a-run',
  panel: { slug: 'kelpwright-plover', isNew: false, maker: 'kelpwright', model: 'Plover' },
  date: '2026-11-21',
  photos: [],
};

describe('the name of a picture', () => {
  test.each([
    [[], 'kelpwright-plover-2026-11-21-1.jpg'],
    [['kelpwright-plover-2026-11-21-1.jpg'], 'kelpwright-plover-2026-11-21-2.jpg'],
    // A number stands for one picture, whatever its format and capitals.
    [['Kelpwright-Plover-2026-11-21-1.PNG'], 'kelpwright-plover-2026-11-21-2.jpg'],
    [['kelpwright-plover-2026-11-21-2.jpg', 'front.jpg'], 'kelpwright-plover-2026-11-21-1.jpg'],
  ])('beside %j', (taken, name) => {
    expect(photoName(RUN, 'image/jpeg', taken)).toBe(name);
  });

  test('every kind that is asked for is one that the content’s files take', () => {
    for (const kind of PHOTO_ACCEPT.split(',')) {
      const ending = photoName(RUN, kind, [])?.replace(/^.*\./, '.') ?? '';
      expect(PHOTOS).toContain(ending);
    }
    expect(photoName(RUN, 'image/heic', [])).toBeUndefined();
    expect(photoName(RUN, 'constructor', [])).toBeUndefined();
  });
});

test('pictures are kept one by one, and what could not be says why', async () => {
  const kept: StoredPhoto[] = [{ file: 'kelpwright-plover-2026-11-21-1.jpg', picture: new Blob() }];
  const store = {
    photos: async () => kept,
    savePhoto: async (_: string, file: string, picture: Blob) => {
      if (picture.size > 3) throw new BenchStoreError('full');
      kept.push({ file, picture });
    },
  } as unknown as BenchStore;
  const file = (name: string, text: string, type: string) => new File([text], name, { type });
  const { taken, refused } = await takePhotos(
    store,
    RUN,
    [
      file('1.jpg', 'abc', 'image/jpeg'),
      file('2.heic', 'abc', 'image/heic'),
      file('3.png', '', 'image/png'),
      file('4.jpg', 'too large', 'image/jpeg'),
      file('5.png', 'def', 'image/png'),
    ],
    ['kelpwright-plover-2026-11-21-3.jpg'],
  );
  expect(taken.map((it) => it.file)).toEqual([
    'kelpwright-plover-2026-11-21-2.jpg',
    'kelpwright-plover-2026-11-21-4.png',
  ]);
  expect(await taken[1]?.picture.text()).toBe('def');
  expect(refused).toEqual([
    { name: '2.heic', refused: 'kind' },
    { name: '3.png', refused: 'empty' },
    { name: '4.jpg', refused: 'full' },
  ]);
});

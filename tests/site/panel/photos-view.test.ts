import { expect, test } from 'vitest';
import type { Photo } from '../../../src/ledger/ledger.ts';
import { photosView } from '../../../src/site/panel/photos-view.ts';
import { photoEntry, smallPhoto } from '../../../src/site/shared/small-photo.ts';

const photo = (it: Partial<Photo>): Photo => ({
  name: 'front.jpg',
  file: { path: 'front.jpg', width: 1000, height: 2000, mark: 'abc' },
  shows: 'Front with its stand',
  by: undefined,
  date: undefined,
  ...it,
});

test('a photo is shown in the sizes that it has, as wide as its place', () => {
  const [shown] = photosView({ slug: 'tern', photos: [photo({})] });
  expect(shown?.sources).toEqual(
    ['avif', 'webp'].map((it) => ({
      type: `image/${it}`,
      srcset: [320, 640, 1000].map((width) => `/photos/tern/front-abc-${width}.${it} ${width}w`).join(', '),
    })),
  );
  expect(shown).toMatchObject({
    sizes: '(min-width: 40rem) 9rem, 7rem',
    src: '/photos/tern/front-abc-640.jpg',
    width: 640,
    height: 1280,
    whole: '/photos/tern/front-abc-1000.webp',
    shows: 'Front with its stand',
    origin: '',
  });
});

test('whose picture it is and when it was taken stand behind what it shows', () => {
  const origins = photosView({
    slug: 'tern',
    photos: [
      photo({ by: 'The library.' }),
      photo({ date: '2026-11-17' }),
      photo({ by: 'A member', date: '2026-11-17' }),
    ],
  }).map((it) => it.origin);
  expect(origins).toEqual(['The library.', 'Taken 17 Nov 2026.', 'Taken 17 Nov 2026. A member.']);
});

test('a panel is stood for by its own first photo, never by one of a wall', () => {
  const wall = photo({ name: 'wall.jpg', date: '2026-11-17' });
  const photos = [photo({}), photo({ name: 'back.jpg' }), wall];
  expect(smallPhoto({ slug: 'tern', photos })).toEqual({
    src: '/photos/tern/front-abc-80.webp',
    width: 80,
    height: 160,
    alt: 'Front with its stand',
  });
  expect(photoEntry({ slug: 'tern', photos: [wall] })).toEqual({});
});

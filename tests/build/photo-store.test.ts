/** What is published of a photo: its sizes and formats, upright, and nothing of what a camera writes into it. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { pictureOf } from '../../src/build/photos/photo-store.ts';
import { readPhotoFile } from '../../src/content/read/photo-file.ts';
import type { Photo } from '../../src/ledger/ledger.ts';
import { type PhotoVariant, photoPictures, photoVariants } from '../../src/site/shared/photo-files.ts';
import { cameraPhoto, plainPicture, SECRET } from '../support/photo-bytes.ts';

let folder: string;
let original: Buffer;
let photo: Photo;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'photos-'));
  original = await cameraPhoto();
  photo = keep('Wall & floor.JPG', original);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function keep(name: string, bytes: Uint8Array): Photo {
  const path = join(folder, name);
  writeFileSync(path, bytes);
  const file = readPhotoFile(path);
  if (!file) throw new Error('no photo');
  return { name, file, shows: 'A wall.', by: undefined, date: undefined };
}

const sizes = (them: readonly PhotoVariant[]) => them.map((it) => [it.width, it.height]);

test('comes in widths up to its own, in both new formats and one for the rest', () => {
  const { avif, webp, fallback, small } = photoPictures('tern', photo);
  expect(sizes(avif)).toEqual([
    [320, 240],
    [640, 480],
    [1280, 960],
  ]);
  expect(sizes(webp)).toEqual(sizes(avif));
  expect([fallback.format, ...sizes([fallback, small])]).toEqual(['jpg', [640, 480], [160, 120]]);
  expect(fallback.address).toMatch(/^\/photos\/tern\/wall-floor-[0-9a-f]{16}-640\.jpg$/);
});

test('a small one is not made larger, and stands there once in each format', async () => {
  const tiny = keep('tiny.png', await plainPicture(120, 90).png().toBuffer());
  expect(photoVariants('tern', tiny).map((it) => [it.format, it.width, it.height])).toEqual([
    ['avif', 120, 90],
    ['webp', 120, 90],
    ['jpg', 120, 90],
  ]);
});

describe('each published picture', () => {
  test('has nothing of the camera’s words: no place, no owner, no colour space, no turn', async () => {
    const before = await sharp(original).metadata();
    expect([before.exif?.includes(SECRET), before.icc !== undefined, before.orientation]).toEqual([true, true, 6]);
    // Degrees, minutes and hundredths of seconds of the latitude, as the file has them.
    expect(original.includes(Buffer.from([51, 0, 0, 0, 1, 0, 0, 0, 30]))).toBe(true);
    for (const variant of photoVariants('tern', photo)) {
      const bytes = await pictureOf(photo, variant).toBuffer();
      const { exif, icc, xmp, iptc, orientation, format, width, height } = await sharp(bytes).metadata();
      expect([exif, icc, xmp, iptc, orientation], variant.address).toEqual(Array(5).fill(undefined));
      expect([width, height], variant.address).toEqual([variant.width, variant.height]);
      expect({ avif: 'heif', webp: 'webp', jpg: 'jpeg' }[variant.format], variant.address).toBe(format);
      for (const word of [SECRET, 'Exif', 'GPS', 'Display P3']) {
        expect(bytes.includes(word), `${variant.address} ${word}`).toBe(false);
      }
    }
  });

  test('stands upright, in its own colours', async () => {
    for (const variant of photoVariants('tern', photo)) {
      const bytes = await pictureOf(photo, variant).toBuffer();
      const { data, info } = await sharp(bytes).removeAlpha().raw().toBuffer({ resolveWithObject: true });
      const at = (x: number, y: number) => {
        const from = info.channels * (Math.round(y * info.height) * info.width + Math.round(x * info.width));
        return [...data.subarray(from, from + 3)];
      };
      const [red = 0, green = 0, blue = 0] = at(0.25, 0.25);
      expect(red - Math.max(green, blue), variant.address).toBeGreaterThan(150);
      expect(Math.min(...at(0.75, 0.75)), variant.address).toBeGreaterThan(230);
    }
  });

  test('is the same, byte for byte, whenever it is made', async () => {
    for (const variant of photoVariants('tern', photo)) {
      const [one, other] = await Promise.all([0, 1].map(() => pictureOf(photo, variant).toBuffer()));
      expect(one?.equals(other as Buffer), variant.address).toBe(true);
    }
  });

  test('has another address than that of another picture under the same name', async () => {
    const [before] = photoVariants('tern', photo);
    const [after] = photoVariants('tern', keep('Wall & floor.JPG', await cameraPhoto(1604, 1200)));
    expect(after?.address).not.toBe(before?.address);
    writeFileSync(join(folder, 'Wall & floor.JPG'), original);
    expect(photoVariants('tern', keep('Wall & floor.JPG', readFileSync(photo.file.path)))[0]).toEqual(before);
  });
});

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { encode as encodePng } from 'fast-png';
import jpeg from 'jpeg-js';
import { afterAll, describe, expect, test } from 'vitest';
import { decodePicture, storedCorners } from '../../../../src/content/read/files/picture-pixels.ts';
import { wallPhotoReader } from '../../../../src/content/read/files/wall-photo.ts';
import { wallPhoto } from '../../../../src/content/schema/files/wall-photo.ts';
import type { Corners } from '../../../../src/measure/wall/homography.ts';

const folder = mkdtempSync(join(tmpdir(), 'wall-photo-'));
afterAll(() => rmSync(folder, { recursive: true }));

const [WIDTH, HEIGHT] = [40, 30];

/** Left half dim, right half bright, the lower right corner brightest. */
const numberAt = (x: number, y: number) => (x < 20 ? 60 : y < 20 ? 120 : 180);
const pixels = (channels: number, scale = 1) =>
  Array.from({ length: WIDTH * HEIGHT * channels }, (_, i) => {
    const pixel = Math.floor(i / channels);
    return i % channels === 3 ? 255 * scale : scale * numberAt(pixel % WIDTH, Math.floor(pixel / WIDTH));
  });

const size = { width: WIDTH, height: HEIGHT };
const asJpeg = () => new Uint8Array(jpeg.encode({ ...size, data: Uint8Array.from(pixels(4)) }, 95).data);
const asPng = (channels: 1 | 3 | 4) =>
  encodePng({ ...size, data: Uint8Array.from(pixels(channels)), depth: 8, channels });
const asDeepPng = () => encodePng({ ...size, data: Uint16Array.from(pixels(3, 257)), depth: 16, channels: 3 });

/** A JPEG whose camera wrote how it is to be turned: an Exif block with that one entry. */
function turned(orientation: number): Uint8Array {
  const exif = Buffer.from(
    `ffe1001e457869660000 4d4d002a00000008 0001 0112 0003 00000001 000${orientation}0000`.replaceAll(' ', ''),
    'hex',
  );
  const padded = Buffer.concat([exif, Buffer.alloc(4)]);
  padded.writeUInt16BE(padded.length - 2, 2);
  const plain = asJpeg();
  return Buffer.concat([plain.subarray(0, 2), padded, plain.subarray(2)]);
}

const entryOf = (corners: unknown, more: object = {}) =>
  wallPhoto.parse({ file: 'wall.png', corners, width: '40 cm', height: '30 cm', ...more });
const WHOLE = [
  [0, 0],
  [40, 0],
  [40, 30],
  [0, 30],
];

function read(bytes: Uint8Array, corners: unknown = WHOLE, more: object = {}) {
  const path = join(folder, 'wall.png');
  writeFileSync(path, bytes);
  return wallPhotoReader.read({ path, name: 'wall.png', bytes: bytes.length }, entryOf(corners, more));
}

describe('pixels of a picture', () => {
  test.each([
    ['JPEG', asJpeg(), 3],
    ['PNG', asPng(1), 1],
    ['PNG', asPng(3), 3],
    ['PNG', asPng(4), 4],
  ])('%s with %#', (format, bytes, channels) => {
    const decoded = decodePicture(bytes);
    if ('kind' in decoded) throw new Error(decoded.kind);
    expect(decoded).toMatchObject({ format, seen: size, isTurned: false });
    expect(decoded.picture).toMatchObject({ ...size, channels, highest: 255 });
    expect(Math.abs((decoded.picture.data[0] ?? 0) - 60)).toBeLessThan(3);
  });

  test('have sixteen bits where the file does', () => {
    const decoded = decodePicture(asDeepPng());
    if ('kind' in decoded) throw new Error(decoded.kind);
    expect(decoded.picture.highest).toBe(65535);
    expect(decoded.picture.data[0]).toBe(60 * 257);
  });

  // Where the stored upper left pixel is seen, by the eight ways of Exif (from memory; 3, 6 and 8 are what cameras write).
  test.each([
    [1, [0, 0]],
    [2, [40, 0]],
    [3, [40, 30]],
    [4, [0, 30]],
    [5, [0, 0]],
    [6, [30, 0]],
    [7, [30, 40]],
    [8, [0, 40]],
  ])('turned by way %i put their first pixel at %j', (orientation, seenAt) => {
    const decoded = decodePicture(turned(orientation));
    if ('kind' in decoded) throw new Error(decoded.kind);
    expect(decoded.isTurned).toBe(orientation > 1);
    expect(decoded.seen).toEqual(orientation > 4 ? { width: 30, height: 40 } : size);
    expect(decoded.stored(seenAt as [number, number])).toEqual([0, 0]);
  });
});

describe('a photo of the wall', () => {
  test('is straightened, upright as it is seen', () => {
    const result = read(
      turned(6),
      [
        [0, 0],
        [30, 0],
        [30, 40],
        [0, 40],
      ],
      { width: '30 cm', height: '40 cm' },
    );
    if ('fault' in result) throw new Error(result.fault.found);
    const { light, seen } = result.data;
    expect(seen).toEqual({ width: 30, height: 40 });
    expect(result.notes).toEqual([{ code: 'wall-photo-turned' }]);
    // Turned right, the dim left half is above, and the brightest corner lies lower left.
    const redAt = (x: number, y: number) => light.red[y * light.columns + x] ?? 0;
    expect([light.columns, light.rows]).toEqual([30, 40]);
    expect(redAt(15, 5)).toBeLessThan(redAt(25, 35));
    expect(redAt(3, 35)).toBeGreaterThan(redAt(25, 35));
  });

  test('takes a grey picture, and says so', () => {
    expect(read(asPng(1))).toMatchObject({ notes: [{ code: 'wall-photo-grey' }] });
  });

  test.each([
    ['empty', new Uint8Array(0), 'no picture, by its content'],
    ['words', new TextEncoder().encode('x,y\n1,2'), 'no picture, by its content'],
    ['a PNG cut short', asPng(3).subarray(0, 60), 'a picture that can’t be decoded to its end'],
    ['a JPEG cut short', asJpeg().subarray(0, 700), 'a picture that can’t be decoded to its end'],
    ['of another kind', new TextEncoder().encode('GIF89a\x28\0\x1e\0\0\0\0'), 'a picture packed as GIF'],
  ])('%s is refused in words', (_, bytes, found) => {
    expect(read(bytes)).toMatchObject({ fault: { found } });
  });

  test('of too many pixels is not decoded', () => {
    const head = Buffer.from(asPng(3));
    head.writeUInt32BE(20000, 16);
    head.writeUInt32BE(20000, 20);
    expect(read(head)).toMatchObject({ fault: { found: 'a picture of 400 million pixels' } });
  });

  test.each([
    [
      [
        [0, 0],
        [41, 0],
        [40, 30],
        [0, 30],
      ],
      'a corner at [41, 0] of a picture of 40 × 30 pixels',
    ],
    [
      [
        [0, 30],
        [40, 30],
        [40, 0],
        [0, 0],
      ],
      'corners that go round against the clock',
    ],
    [
      [
        [0, 0],
        [40, 30],
        [40, 0],
        [0, 30],
      ],
      'corners that cross over, or of which three lie in a line',
    ],
  ])('with corners %j is refused', (corners, found) => {
    expect(read(asPng(3), corners)).toMatchObject({ fault: { found } });
  });

  test('is told by its content', () => {
    const path = join(folder, 'wall.png');
    const bytes = asPng(3);
    expect(wallPhotoReader.recognise({ path, name: 'wall.png', bytes, size: bytes.length })?.understood).toContain(
      '40 × 30 pixels',
    );
    expect(wallPhotoReader.recognise({ path, name: 'a', bytes: new Uint8Array(9), size: 9 })).toBeUndefined();
  });

  test('never makes a throw of what is changed', () => {
    for (const whole of [asJpeg(), asPng(3)]) {
      fc.assert(
        fc.property(
          fc.array(fc.tuple(fc.nat(whole.length - 1), fc.nat(255)), { minLength: 1, maxLength: 6 }),
          fc.nat(whole.length),
          (changes, end) => {
            const bytes = Uint8Array.from(whole);
            for (const [place, byte] of changes) bytes[place] = byte;
            const decoded = decodePicture(end > whole.length / 3 ? bytes : bytes.subarray(0, end));
            if ('kind' in decoded) return;
            expect(storedCorners(decoded, WHOLE as unknown as Corners)).toHaveLength(4);
          },
        ),
        { numRuns: 60, seed: 5 },
      );
    }
  });
});

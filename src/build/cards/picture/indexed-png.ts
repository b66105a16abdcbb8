import { promisify } from 'node:util';
import { crc32, deflate } from 'node:zlib';
import { type Colour, PALETTE } from './palette.ts';

/*
 * A PNG of sixteen colours (W3C, PNG Specification, Third Edition; read in part). Written here, since the library that
 * is there for PNGs takes ten times as long to compress and the picture library looks for the colours first.
 */

const SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
/** Bits a pixel, and "each is a number of the palette". */
const [DEPTH, INDEXED] = [4, 3];
/** Of two levels that take about as long, the one that makes files smaller. */
const LEVEL = 5;

const compressed = promisify<Buffer, { level: number }, Buffer>(deflate);

/** What the recipe is known by, where pictures are kept. */
export const PNG_RECIPE = JSON.stringify([DEPTH, LEVEL, PALETTE]);

/** A picture of numbers of the palette as a file. They are read before this returns, so that the next may take their place. */
export async function indexedPng(picture: { width: number; height: number; pixels: Uint8Array }): Promise<Buffer> {
  const { width, height } = picture;
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([DEPTH, INDEXED], 8);
  const memory = spare.pop() ?? Buffer.alloc(0);
  const rows = packed(picture, memory);
  const data = await compressed(rows, { level: LEVEL });
  spare.push(rows.length > memory.length ? rows : memory);
  return Buffer.concat([
    SIGNATURE,
    ...chunk('IHDR', header),
    ...chunk('PLTE', Buffer.from(PALETTE.flatMap((it: Colour) => it))),
    ...chunk('IDAT', data),
    ...chunk('IEND', Buffer.alloc(0)),
  ]);
}

/** Memory for the rows of as many pictures as are made at a time: fresh megabytes for each have V8 collect garbage all the time. */
const spare: Buffer[] = [];

/** Two pixels a byte, each row behind a byte that says: as it is. In the memory that is given, if it is enough. */
function packed({ width, height, pixels }: { width: number; height: number; pixels: Uint8Array }, memory: Buffer) {
  const bytes = Math.ceil(width / 2);
  const size = (bytes + 1) * height;
  const rows = memory.length < size ? Buffer.alloc(size) : memory.subarray(0, size).fill(0);
  // Most of a card is paper, nought in both: eight pixels of it are passed over at once where they lie as one number.
  const eights = new Float64Array(pixels.buffer, pixels.byteOffset, Math.floor(pixels.length / 8));
  let from = 0;
  for (let y = 0; y < height; y++) {
    let to = y * (bytes + 1) + 1;
    const end = from + width;
    while (from < end - 1) {
      if (from % 8 === 0 && end - from >= 8 && eights[from / 8] === 0) {
        from += 8;
        to += 4;
      } else {
        rows[to++] = ((pixels[from] as number) << 4) | (pixels[from + 1] as number);
        from += 2;
      }
    }
    if (from < end) rows[to] = (pixels[from++] as number) << 4;
  }
  return rows;
}

/** Length, name, data and checksum of a part of the file. */
function chunk(name: string, data: Buffer): [Buffer, Buffer, Buffer] {
  const head = Buffer.alloc(8);
  head.writeUInt32BE(data.length, 0);
  head.write(name, 4, 'latin1');
  const check = Buffer.alloc(4);
  check.writeUInt32BE(crc32(data, crc32(head.subarray(4))), 0);
  return [head, data, check];
}

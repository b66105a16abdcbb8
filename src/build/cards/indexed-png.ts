import { constants, crc32, deflateSync } from 'node:zlib';
import { type Colour, colourNumber, KNOWN_NUMBERS, PALETTE } from './palette.ts';

/*
 * A PNG of few colours (PNG, third edition, W3C; from memory): two pixels a byte, by their numbers in a list of colours.
 * The compressing is zlib's; no package at hand writes such a file in less than three times as long.
 */

const SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
/** Bits of a pixel, and that they are a number in the list. */
const DEPTH = 4;
const INDEXED = 3;
/**
 * How a row is written: its numbers as they are, or by how much each byte is more than the one above it, which leaves
 * most of a drawing nought.
 */
const AS_IS = 0;
const FROM_ABOVE = 2;
/**
 * Zlib looks for bytes that are alike one after another, and for nothing else: a third of the time that it takes to look
 * for all that is alike, for a fortieth more bytes.
 */
const COMPRESSION = { strategy: constants.Z_RLE };
const INCH = 0.0254;

/**
 * Memory for rows that have become a file, for the next ones: a megabyte asked for with each picture has the garbage
 * collector look through all that a build holds again and again.
 */
let spare = new ArrayBuffer(0);

/** Rows of numbers of colours, each behind the byte that says how it is written. */
export interface NumberedRows {
  width: number;
  height: number;
  rows: Buffer;
}

/** Pixels of a row that are looked at together. */
const PIECE = 8;

/**
 * A picture by the numbers of its colours. Most of it is as the row above is, and passed over by the row or by the piece.
 *
 * @param pixels row by row, as for `colourNumber`
 */
export function numbered(pixels: Int32Array, width: number, height: number): NumberedRows {
  const length = 1 + Math.ceil(width / 2);
  const rows = blankRows(length * height);
  const bytes = Buffer.from(pixels.buffer, pixels.byteOffset, pixels.byteLength);
  const pairs = pairsOf(pixels, width);
  const known = KNOWN_NUMBERS;
  /** Numbers of the row above, two a byte; nought over the first. */
  const line = new Uint8Array(length - 1);
  const isInked = new Uint8Array(Math.ceil(width / PIECE));
  let inked = 0;
  for (let y = 0, start = 0; y < height; y++, start += length) {
    rows[start] = FROM_ABOVE;
    if (y > 0 && isRowAsAbove(bytes, y, width)) continue;
    let changed = 0;
    for (let x = 0, piece = 0; x < width; x += PIECE, piece++) {
      const i = y * width + x;
      if (pairs && y > 0 && x + PIECE <= width && isAsAbove(pairs, i >> 1, width >> 1)) continue;
      changed++;
      let ink = 0;
      const end = Math.min(x + PIECE, width);
      // A pair of their own, made a million times, would be most of the work.
      for (let j = i, pair = x >> 1; pair << 1 < end; j += 2, pair++) {
        const second = (pair << 1) + 1 < width ? colourNumber(pixels[j + 1] as number, known) : 0;
        const both = (colourNumber(pixels[j] as number, known) << DEPTH) | second;
        rows[start + 1 + pair] = both - (line[pair] as number);
        line[pair] = both;
        ink |= both;
      }
      inked += (ink === 0 ? 0 : 1) - (isInked[piece] as number);
      isInked[piece] = ink === 0 ? 0 : 1;
    }
    // Letters with little above them are shorter as they are.
    if (inked >= changed) continue;
    rows[start] = AS_IS;
    rows.set(line, start + 1);
  }
  return { width, height, rows };
}

/** Whether a row of pixels has the very bytes of the one above it. */
function isRowAsAbove(bytes: Buffer, y: number, width: number): boolean {
  const row = width * Int32Array.BYTES_PER_ELEMENT;
  return bytes.compare(bytes, (y - 1) * row, y * row, y * row, (y + 1) * row) === 0;
}

/** Pixels two at a time, which are compared in less time than one at a time; undefined where rows don't begin with a pair. */
function pairsOf({ buffer, byteOffset, length }: Int32Array, width: number): BigInt64Array | undefined {
  const isEven = width % 2 === 0 && byteOffset % BigInt64Array.BYTES_PER_ELEMENT === 0;
  return isEven ? new BigInt64Array(buffer, byteOffset, length / 2) : undefined;
}

/** Whether a piece is as what is above it: four pairs, without a loop, which would take as long as pixel by pixel. */
function isAsAbove(pairs: BigInt64Array, at: number, row: number): boolean {
  const above = at - row;
  return (
    pairs[at] === pairs[above] &&
    pairs[at + 1] === pairs[above + 1] &&
    pairs[at + 2] === pairs[above + 2] &&
    pairs[at + 3] === pairs[above + 3]
  );
}

/** So many bytes of nought. */
function blankRows(length: number): Buffer {
  const rows = spare.byteLength < length ? Buffer.from(new ArrayBuffer(length)) : Buffer.from(spare, 0, length).fill(0);
  spare = new ArrayBuffer(0);
  return rows;
}

/**
 * The file of a picture. Its rows are no one's after that.
 *
 * @param perInch dots, where it is for paper of one size
 */
export function indexedPng({ width, height, rows }: NumberedRows, perInch?: number): Buffer {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([DEPTH, INDEXED], 8);
  const compressed = deflateSync(rows, COMPRESSION);
  spare = rows.buffer as ArrayBuffer;
  return Buffer.concat([
    SIGNATURE,
    chunk('IHDR', header),
    chunk('PLTE', Buffer.from(PALETTE.flatMap((it: Colour) => it))),
    ...(perInch === undefined ? [] : [chunk('pHYs', dotsOf(perInch))]),
    chunk('IDAT', compressed),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

/** Dots a metre, across and down. */
function dotsOf(perInch: number): Buffer {
  const dots = Buffer.alloc(9);
  const perMetre = Math.round(perInch / INCH);
  dots.writeUInt32BE(perMetre, 0);
  dots.writeUInt32BE(perMetre, 4);
  dots[8] = 1;
  return dots;
}

/** A part of the file with its length, its name and its check sum. */
function chunk(name: string, data: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(name, 'latin1'), data]);
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  sum.writeUInt32BE(crc32(named));
  return Buffer.concat([length, named, sum]);
}

import { promisify } from 'node:util';
import { crc32, deflate } from 'node:zlib';
import { type Colour, colourNumber, KNOWN_NUMBERS, PALETTE } from './palette.ts';

/*
 * A PNG of few colours (PNG, third edition, W3C; from memory): two pixels a byte, by their numbers in a list of colours.
 * The compressing is zlib's; no package at hand writes such a file in less than three times as long.
 */

const SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
/** Bits of a pixel, and that they are a number in the list. */
const DEPTH = 4;
const INDEXED = 3;
/** A row of numbers is written as it is: to write differences of rows makes drawings larger. */
const AS_IS = 0;
/** Of zlib's levels: the next one takes half as long again for a sixteenth less. */
const LEVEL = 5;
const INCH = 0.0254;

const compress = promisify(deflate);

/**
 * Rows that have become a file, for others to be written into: a megabyte asked for with each picture has the garbage
 * collector look through all that a build holds again and again.
 */
const spare: Buffer[] = [];

/** Rows of numbers of colours, each behind the byte that says how it is written. */
export interface NumberedRows {
  width: number;
  height: number;
  rows: Buffer;
}

/**
 * A picture by the numbers of its colours.
 *
 * @param pixels row by row, as for `colourNumber`; the first is paper
 */
export function numbered(pixels: Int32Array, width: number, height: number): NumberedRows {
  const length = 1 + Math.ceil(width / 2);
  const rows = blankRows(length * height);
  const known = KNOWN_NUMBERS;
  const paper = pixels[0] as number;
  for (let y = 0, i = 0; y < height; y++) {
    let at = y * length + 1;
    const end = i + width;
    for (; i + 1 < end; i += 2, at++) {
      // A pair of their own, made a million times, would be most of the work.
      const one = pixels[i] as number;
      const other = pixels[i + 1] as number;
      // Most of a card, whose number is 0.
      if (one === paper && other === paper) continue;
      rows[at] = (colourNumber(one, known) << DEPTH) | colourNumber(other, known);
    }
    if (i < end) rows[at] = colourNumber(pixels[i++] as number, known) << DEPTH;
  }
  return { width, height, rows };
}

/** So many bytes of nought: as they are, and paper. */
function blankRows(length: number): Buffer {
  const used = spare.findIndex((it) => it.buffer.byteLength >= length);
  const [rows] = used < 0 ? [] : spare.splice(used, 1);
  return rows ? Buffer.from(rows.buffer, 0, length).fill(AS_IS) : Buffer.from(new ArrayBuffer(length));
}

/**
 * The file of a picture. Its rows are no one's after that.
 *
 * @param perInch dots, where it is for paper of one size
 */
export async function indexedPng({ width, height, rows }: NumberedRows, perInch?: number): Promise<Buffer> {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([DEPTH, INDEXED], 8);
  const compressed = await compress(rows, { level: LEVEL });
  spare.push(rows);
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

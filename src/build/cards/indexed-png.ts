import { constants, crc32, deflateSync } from 'node:zlib';
import { type Colour, PALETTE } from './palette.ts';
import type { Sheet } from './sheet.ts';

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
const COMPRESSION = { strategy: constants.Z_RLE, memLevel: 9, chunkSize: 65_536 };
const INCH = 0.0254;

/**
 * Memory for rows that have become a file, for the next ones: a megabyte asked for with each picture has the garbage
 * collector look through all that a build holds again and again.
 */
let spare = new ArrayBuffer(0);

/** Bytes that are compared at a time. */
const WORD = Int32Array.BYTES_PER_ELEMENT;

/** Rows of numbers of colours, each behind the byte that says how it is written. */
export interface NumberedRows {
  width: number;
  height: number;
  rows: Buffer;
}

/** A sheet's rows as a file has them. Where nothing was drawn is passed over. */
export function rowsOf(sheet: Sheet): NumberedRows {
  const { width, height, bytes, words, perRow } = sheet;
  const length = 1 + Math.ceil(width / 2);
  const rows = blankRows(length * height);
  for (let y = 0, start = 0; y < height; y++, start += length) {
    rows[start] = FROM_ABOVE;
    const { from, to: last } = sheet.drawn(y);
    let inked = 0;
    let changed = 0;
    const first = (y + 1) * perRow;
    for (let i = first + from, end = first + last, to = start + 1 + from * WORD; i < end; i++, to += WORD) {
      const own = words[i] as number;
      const above = words[i - perRow] as number;
      if (own !== 0) inked++;
      if (own === above) continue;
      changed++;
      // Byte by byte, the first one lowest.
      rows[to] = own - above;
      rows[to + 1] = (own >> 8) - (above >> 8);
      rows[to + 2] = (own >> 16) - (above >> 16);
      rows[to + 3] = (own >> 24) - (above >> 24);
    }
    // Letters with little above them are shorter as they are.
    if (inked >= changed) continue;
    rows[start] = AS_IS;
    bytes.copy(rows, start + 1, sheet.start(y), sheet.start(y) + length - 1);
  }
  return { width, height, rows };
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

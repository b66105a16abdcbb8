import { type Coat, FULL } from './palette.ts';

/*
 * A picture while it is drawn: numbers of colours, two pixels a byte, as its file has them. What is drawn is laid on it by
 * how much of each pixel it covers, so that a letter that was drawn once is copied wherever it stands.
 */

/** How much of each pixel something covers, in steps up to `FULL`: two pixels a byte, row by row. */
export interface Stencil {
  /** Where it begins: whole bytes from the left, rows from the top. */
  left: number;
  top: number;
  /** Bytes of a row, and how many rows. */
  across: number;
  down: number;
  levels: Uint8Array;
}

/** Bytes that are compared at a time: rows begin with a whole word. */
const WORD = Int32Array.BYTES_PER_ELEMENT;

/** A picture while it is drawn; blank to begin with, which is the paper. */
export class Sheet {
  readonly width: number;
  readonly height: number;
  /** All rows, and over the first one that is blank: each begins with its first two pixels. */
  readonly bytes: Buffer;
  /** The same, word by word. */
  readonly words: Int32Array;
  /** Words of a row. */
  readonly perRow: number;
  /** Of each row in `bytes`, where what was drawn begins, and where nothing more was. */
  readonly #begins: Int32Array;
  readonly #ends: Int32Array;
  isBlank = true;

  /** @param memory for its rows, blank; asked for anew with each picture it would be most of the work */
  constructor(width: number, height: number, memory = new ArrayBuffer(Sheet.size(width, height))) {
    this.width = width;
    this.height = height;
    this.perRow = wordsOf(width);
    this.words = new Int32Array(memory, 0, this.perRow * (height + 1));
    this.bytes = Buffer.from(memory, 0, this.words.byteLength);
    this.#begins = new Int32Array(height + 1).fill(this.perRow * WORD);
    this.#ends = new Int32Array(height + 1);
  }

  /** Bytes that a sheet takes. */
  static size(width: number, height: number): number {
    return wordsOf(width) * WORD * (height + 1);
  }

  /** Where a row begins in `bytes`. */
  start(y: number): number {
    return (y + 1) * this.perRow * WORD;
  }

  /** The words of a row, from its first one, where it or the row above has been drawn on: no other is unlike above. */
  drawn(y: number): { from: number; to: number } {
    const from = Math.min(this.#begins[y] as number, this.#begins[y + 1] as number);
    const to = Math.max(this.#ends[y] as number, this.#ends[y + 1] as number);
    return { from: Math.floor(from / WORD), to: Math.ceil(to / WORD) };
  }

  /** Takes away all that was drawn; its memory may have another sheet then. */
  wipe(): void {
    for (let y = 0; y < this.height; y++) {
      const [begins, ends] = [this.#begins[y + 1] as number, this.#ends[y + 1] as number];
      if (begins < ends) this.bytes.fill(0, this.start(y) + begins, this.start(y) + ends);
    }
    this.#begins.fill(this.perRow * WORD);
    this.#ends.fill(0);
    this.isBlank = true;
  }

  /** A rectangle; pixels at its sides are covered by as much as it reaches into them. */
  bar(left: number, top: number, right: number, bottom: number, coat: Coat): void {
    const start = Math.ceil(left);
    const end = Math.floor(right);
    for (let y = Math.floor(top); y < bottom; y++) {
      const part = Math.min(y + 1, bottom) - Math.max(y, top);
      if (end < start) this.#part(y, end, start, (right - left) * part, coat);
      else {
        this.#part(y, start - 1, start, (start - left) * part, coat);
        this.#part(y, start, end, part, coat);
        this.#part(y, end, end + 1, (right - end) * part, coat);
      }
    }
  }

  #part(y: number, from: number, to: number, part: number, coat: Coat): void {
    const level = Math.round(part * FULL);
    if (level > 0) this.#cover(y, from, to, level, coat);
  }

  /** Whole pixels of a row, all of them by one level; what lies outside is left out. */
  #cover(y: number, left: number, right: number, level: number, coat: Coat): void {
    const from = Math.max(0, left);
    const to = Math.min(this.width, right);
    if (from >= to || y < 0 || y >= this.height) return;
    this.#note(y, from >> 1, (to + 1) >> 1);
    const bytes = this.bytes;
    const start = this.start(y);
    const end = start + (to >> 1);
    let at = start + (from >> 1);
    if (from % 2 === 1) bytes[at] = coated(bytes[at++] as number, level, coat);
    const both = (level << 4) | level;
    let known = -1;
    let upper = 0;
    for (; at < end; at++) {
      const under = bytes[at] as number;
      if (under !== known) {
        known = under;
        upper = coated(under, both, coat);
      }
      bytes[at] = upper;
    }
    if (to % 2 === 1 && at === end) bytes[end] = coated(bytes[end] as number, level << 4, coat);
  }

  /** A stencil so many bytes further to the right and rows further down; what lies outside is left out. */
  lay({ left, top, across, down, levels }: Stencil, right: number, below: number, coat: Coat): void {
    const bytes = this.bytes;
    const from = left + right;
    const first = Math.max(0, -from);
    const last = Math.min(across, ((this.width + 1) >> 1) - from);
    if (first >= last) return;
    for (let row = Math.max(0, -top - below); row < down && row + top + below < this.height; row++) {
      this.#note(row + top + below, from + first, from + last);
      let at = this.start(row + top + below) + from + first;
      for (let i = row * across + first, end = row * across + last; i < end; i++, at++) {
        const both = levels[i] as number;
        if (both !== 0) bytes[at] = coated(bytes[at] as number, both, coat);
      }
    }
  }

  /** That bytes of a row were drawn on. */
  #note(y: number, from: number, to: number): void {
    if (from < (this.#begins[y + 1] as number)) this.#begins[y + 1] = from;
    if (to > (this.#ends[y + 1] as number)) this.#ends[y + 1] = to;
    this.isBlank = false;
  }
}

const wordsOf = (width: number) => Math.ceil(width / (2 * WORD));

/** Two pixels with a coat over them, each as much as a level says. */
const coated = (under: number, levels: number, coat: Coat) =>
  ((coat[(levels & 0xf0) | (under >> 4)] as number) << 4) | (coat[((levels & 15) << 4) | (under & 15)] as number);

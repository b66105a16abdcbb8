import { closeSync, openSync, readSync } from 'node:fs';
import type { FileFault } from './file-kind.ts';

/** How a file's bytes are to be read as letters. */
export type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';

/** Bytes that are looked at to tell what a file is. */
export const HEAD_BYTES = 64 * 1024;

/**
 * Bytes that are read at once: a file of hundreds of megabytes is never in memory. No more, or the texts made of them are too
 * large for where V8 keeps what soon goes, and pile up.
 */
const CHUNK = 64 * 1024;

/** Longest line, letters. A longer one is no line of a table. */
const LONGEST_LINE = 256 * 1024;

/** Bytes that no text has. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: it is these that are looked for
const NO_TEXT = /[\x00-\x08\x0e-\x1a\x1c-\x1f]/;

/** The first bytes of a file. */
export function headOf(path: string, most = HEAD_BYTES): Uint8Array {
  const bytes = Buffer.alloc(most);
  const file = openSync(path, 'r');
  try {
    return bytes.subarray(0, readSync(file, bytes, 0, most, 0));
  } finally {
    closeSync(file);
  }
}

/** How the bytes of a file's start are to be read; undefined where they are no text. */
export function encodingOf(head: Uint8Array): Encoding | undefined {
  const [first = 0, second = 0] = head;
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  if (first === 0xfe && second === 0xff) return 'utf-16be';
  const sample = head.subarray(0, 1024);
  // Letters of western tables in two bytes each have a zero in every second.
  const zeros = (from: 0 | 1) => sample.filter((byte, i) => i % 2 === from && byte === 0).length;
  const half = sample.length / 2;
  if (half > 4 && zeros(1) > 0.4 * half && zeros(0) === 0) return 'utf-16le';
  if (half > 4 && zeros(0) > 0.4 * half && zeros(1) === 0) return 'utf-16be';
  if (NO_TEXT.test(Buffer.from(head).toString('latin1'))) return undefined;
  try {
    // The last letter may be cut.
    new TextDecoder('utf-8', { fatal: true }).decode(head, { stream: true });
    return 'utf-8';
  } catch {
    return 'windows-1252';
  }
}

/** The whole lines of a file's start, as text; the last one only where it is the file's end. */
export function headLines(head: Uint8Array, encoding: Encoding, isWhole: boolean): string[] {
  const text = new TextDecoder(encoding).decode(head, { stream: !isWhole });
  const lines = text.split(/\r\n|\n|\r/);
  if (!isWhole && lines.length > 1) lines.pop();
  return lines;
}

/**
 * Gives the lines of a text file one by one, without holding more than a piece of it.
 *
 * @param take is given each line and its number, from 1; what it returns ends the reading
 */
export function eachLine(
  path: string,
  encoding: Encoding,
  take: (line: string, number: number) => FileFault | undefined,
): FileFault | undefined {
  const decoder = new TextDecoder(encoding);
  const bytes = Buffer.allocUnsafe(CHUNK);
  const file = openSync(path, 'r');
  let rest = '';
  let number = 0;
  let isEnd = false;
  try {
    while (!isEnd) {
      const length = readSync(file, bytes, 0, CHUNK, null);
      isEnd = length === 0;
      const text = rest + decoder.decode(bytes.subarray(0, length), { stream: !isEnd });
      let from = 0;
      for (;;) {
        const end = lineEnd(text, from, isEnd);
        if (end === undefined) break;
        number++;
        const fault = take(text.slice(from, end.at), number);
        if (fault) return fault;
        from = end.next;
      }
      rest = text.slice(from);
      if (rest.length > LONGEST_LINE) {
        return {
          line: number + 1,
          found: `a line of more than ${LONGEST_LINE / 1024} thousand letters`,
          wanted: 'a table with a row to a line',
        };
      }
    }
    return rest === '' ? undefined : take(rest, number + 1);
  } finally {
    closeSync(file);
  }
}

/** Where the line that starts at a place ends, and where the next one starts; undefined where more has to be read. */
function lineEnd(text: string, from: number, isEnd: boolean): { at: number; next: number } | undefined {
  const feed = text.indexOf('\n', from);
  const line = feed < 0 ? text.length : feed;
  const carriage = text.slice(from, line).indexOf('\r');
  if (carriage < 0) return feed < 0 ? undefined : { at: feed, next: feed + 1 };
  const at = from + carriage;
  if (at + 1 === feed) return { at, next: feed + 1 };
  // A carriage return at the end of what was read may have its line feed in what follows.
  if (at + 1 === text.length && !isEnd) return undefined;
  return { at, next: at + 1 };
}

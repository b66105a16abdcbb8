import { closeSync, openSync, readSync } from 'node:fs';

/** Endings of the pictures that the build can take in. */
export const PICTURES = ['.avif', '.gif', '.jpeg', '.jpg', '.png', '.svg', '.tiff', '.webp'];

/** How such files start, byte for byte as characters; of a drawing, its element within the first kilobyte. */
const STARTS = [
  /^\x89PNG\r\n/,
  /^\xff\xd8\xff/,
  /^GIF8[79]a/,
  /^RIFF.{4}WEBP/s,
  /^.{4}ftypavi[fs]/s,
  /^(?:II\*\0|MM\0\*)/,
  /<svg[\s>]/,
];
const FIRST = 1024;

/** True where a file starts like a picture of one of these kinds; more is not looked at. */
export function isPicture(path: string): boolean {
  const bytes = Buffer.alloc(FIRST);
  const file = openSync(path, 'r');
  try {
    const start = bytes.toString('latin1', 0, readSync(file, bytes));
    return STARTS.some((it) => it.test(start));
  } finally {
    closeSync(file);
  }
}

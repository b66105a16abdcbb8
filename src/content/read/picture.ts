import { closeSync, openSync, readSync } from 'node:fs';

/** Endings of the pictures that the build can take in. */
export const PICTURES = ['.avif', '.gif', '.jpeg', '.jpg', '.png', '.svg', '.tiff', '.webp'];

/** How such files start, byte for byte as characters; of a drawing, its element within the first kilobyte. */
const STARTS = {
  png: /^\x89PNG\r\n/,
  jpeg: /^\xff\xd8\xff/,
  gif: /^GIF8[79]a/,
  webp: /^RIFF.{4}WEBP/s,
  avif: /^.{4}ftypavi[fs]/s,
  tiff: /^(?:II\*\0|MM\0\*)/,
  heic: /^.{4}ftyp(?:heic|heix|hevc|heim|heis)/s,
  svg: /<svg[\s>]/,
} as const;
const FIRST = 1024;

export type PictureKind = keyof typeof STARTS;

/** What a file is by how it starts, whatever its name says; more is not looked at. */
export function pictureKind(path: string): PictureKind | undefined {
  const bytes = Buffer.alloc(FIRST);
  const file = openSync(path, 'r');
  try {
    const start = bytes.toString('latin1', 0, readSync(file, bytes));
    return (Object.keys(STARTS) as PictureKind[]).find((it) => STARTS[it].test(start));
  } finally {
    closeSync(file);
  }
}

/** True where a file starts like a picture that the build can take in. */
export function isPicture(path: string): boolean {
  const kind = pictureKind(path);
  return kind !== undefined && kind !== 'heic';
}

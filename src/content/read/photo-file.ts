import { createHash } from 'node:crypto';
import { closeSync, openSync, readSync, statSync } from 'node:fs';
import { imageSize } from 'image-size';
import { type PictureKind, pictureKind } from './picture.ts';

/** A photo's file as far as its head tells: nothing is decoded. */
export interface PhotoFile {
  path: string;
  /** Pixels as it is seen, turned as the camera says. */
  width: number;
  height: number;
  /** Differs where the picture does. */
  mark: string;
}

/** Formats that photos are taken in from. */
export const PHOTO_KINDS: readonly PictureKind[] = ['avif', 'jpeg', 'png', 'webp'];

/** Sizes stand near a file's start; behind what cameras put there before them. */
const HEAD = 512 * 1024;
/** Longest that is marked by all of its bytes. */
const WHOLE = 192 * 1024;

/** Camera's words for a picture that lies on its side. */
const SIDEWAYS = new Set([5, 6, 7, 8]);

/**
 * Reads the head of a photo.
 *
 * @returns undefined where it is no photo, or its size can't be told
 */
export function readPhotoFile(path: string): PhotoFile | undefined {
  const kind = pictureKind(path);
  if (!kind || !PHOTO_KINDS.includes(kind)) return undefined;
  const { size } = statSync(path);
  const file = openSync(path, 'r');
  try {
    const part = (from: number, length: number) => {
      const bytes = Buffer.alloc(Math.max(0, Math.min(length, size - from)));
      return bytes.subarray(0, readSync(file, bytes, 0, bytes.length, from));
    };
    const { width, height, orientation = 1 } = sizeOf(part(0, HEAD)) ?? sizeOf(part(0, size)) ?? {};
    if (!width || !height) return undefined;
    const [across, down] = SIDEWAYS.has(orientation) ? [height, width] : [width, height];
    // Packed pictures differ in their length, their first, middle or last bytes: photos of many megabytes are not read.
    const hash = createHash('sha256').update(`${size} `);
    if (size <= WHOLE) hash.update(part(0, size));
    else for (const from of [0, size / 2, size - WHOLE / 3]) hash.update(part(Math.floor(from), WHOLE / 3));
    return { path, width: across, height: down, mark: hash.digest('hex').slice(0, 16) };
  } finally {
    closeSync(file);
  }
}

function sizeOf(bytes: Uint8Array): { width: number; height: number; orientation?: number } | undefined {
  try {
    const { width, height, orientation } = imageSize(bytes);
    return { width, height, ...(orientation !== undefined && { orientation }) };
  } catch {
    return undefined;
  }
}

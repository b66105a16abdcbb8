import exifReader from 'exif-reader';
import { headOf } from './text-lines.ts';

/** Where cameras write what they know: before the picture. */
const HEAD = 512 * 1024;

const EXIF_START = Buffer.from('Exif\0\0', 'latin1');

/**
 * True where a JPEG or PNG says where it was taken. Photos that pages show are made anew without it; a file from the bench
 * is published byte for byte.
 */
export function saysPlace(path: string): boolean {
  const exif = exifOf(Buffer.from(headOf(path, HEAD)));
  if (!exif) return false;
  try {
    const { GPSInfo } = exifReader(exif);
    return GPSInfo !== undefined && Object.keys(GPSInfo).length > 0;
  } catch {
    // What can't be read may hold a place all the same: the tag that leads to it is looked for.
    return exif.includes(Buffer.from([0x25, 0x88])) || exif.includes(Buffer.from([0x88, 0x25]));
  }
}

/** What a picture's head holds of the camera's words. */
function exifOf(head: Buffer): Buffer | undefined {
  if (head.readUInt16BE(0) === 0xffd8) return jpegExif(head);
  const png = head.indexOf('eXIf', 0, 'latin1');
  return head.subarray(1, 4).toString('latin1') === 'PNG' && png > 4
    ? head.subarray(png + 4, png + 4 + head.readUInt32BE(png - 4))
    : undefined;
}

/** Goes from segment to segment: each says how long it is. */
function jpegExif(head: Buffer): Buffer | undefined {
  for (let at = 2; at + 4 <= head.length && head[at] === 0xff; at += 2 + head.readUInt16BE(at + 2)) {
    const segment = head.subarray(at + 4, at + 2 + head.readUInt16BE(at + 2));
    if (head[at + 1] === 0xe1 && segment.subarray(0, 6).equals(EXIF_START)) return segment;
  }
  return undefined;
}

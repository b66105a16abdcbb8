import { convertIndexedToRgb, type DecodedPng, decode as decodePng } from 'fast-png';
import { imageSize } from 'image-size';
import jpeg from 'jpeg-js';
import type { Corners, Place } from '../../../measure/wall/homography.ts';
import type { Picture } from '../../../measure/wall/straighten.ts';

/** A picture as it was decoded, and how a viewer turns it. */
export interface DecodedPicture {
  format: 'JPEG' | 'PNG';
  picture: Picture;
  /** Pixels as it is seen, turned as the camera says. */
  seen: { width: number; height: number };
  /** From a place as it is seen to the same in the stored pixels. */
  stored(place: Place): Place;
  isTurned: boolean;
}

/** Most pixels that are decoded, millions: 60 take half a gigabyte of memory. */
export const MOST_MEGAPIXELS = 60;

/** Why a picture can't be decoded. */
export type PictureFault =
  | { kind: 'no-picture' }
  | { kind: 'broken' }
  | { kind: 'large'; megapixels: number }
  | { kind: 'packed-otherwise'; what: string };

/** Pixels of a JPEG or PNG. What is broken is told, whatever the decoders say of it. */
export function decodePicture(bytes: Uint8Array): DecodedPicture | PictureFault {
  const head = pictureHead(bytes);
  if (!head) return { kind: 'no-picture' };
  const { width, height, type, orientation } = head;
  const format = type === 'jpg' ? 'JPEG' : type === 'png' ? 'PNG' : undefined;
  if (!format) return { kind: 'packed-otherwise', what: type.toUpperCase() };
  if (width * height > MOST_MEGAPIXELS * 1e6) return { kind: 'large', megapixels: (width * height) / 1e6 };
  try {
    const picture = format === 'JPEG' ? jpegPixels(bytes) : pngPixels(bytes);
    const isSideways = orientation > 4;
    const seen = isSideways
      ? { width: picture.height, height: picture.width }
      : { width: picture.width, height: picture.height };
    return { format, picture, seen, stored: storedPlace(orientation, seen), isTurned: orientation > 1 };
  } catch {
    return { kind: 'broken' };
  }
}

/** What a picture's head tells; undefined where it is none. */
export function pictureHead(bytes: Uint8Array) {
  try {
    const { width, height, type = '', orientation = 1 } = imageSize(bytes);
    return width > 0 && height > 0 ? { width, height, type, orientation } : undefined;
  } catch {
    return undefined;
  }
}

function jpegPixels(bytes: Uint8Array): Picture {
  const { width, height, data } = jpeg.decode(bytes, {
    ...{ useTArray: true, formatAsRGBA: false, tolerantDecoding: false },
    ...{ maxResolutionInMP: MOST_MEGAPIXELS, maxMemoryUsageInMB: 2048 },
  });
  if (data.length !== 3 * width * height) throw new RangeError('not three numbers a pixel');
  return { width, height, channels: 3, highest: 255, data };
}

function pngPixels(bytes: Uint8Array): Picture {
  const png = decodePng(bytes, { checkCrc: true });
  const { width, height } = png;
  if (png.palette) {
    const data = convertIndexedToRgb(png);
    return { width, height, channels: data.length === 4 * width * height ? 4 : 3, highest: 255, data };
  }
  const data = png.depth < 8 ? unpacked(png) : png.data;
  const channels = png.channels as Picture['channels'];
  if (data.length !== channels * width * height) throw new RangeError('too few pixels');
  return { width, height, channels, highest: 2 ** png.depth - 1, data };
}

/** Grey pixels of which several share a byte, row by row. */
function unpacked({ width, height, depth, data }: DecodedPng): Uint8Array {
  const stride = Math.ceil((width * depth) / 8);
  const mask = 2 ** depth - 1;
  return Uint8Array.from({ length: width * height }, (_, i) => {
    const bit = (i % width) * depth;
    return ((data[Math.floor(i / width) * stride + (bit >> 3)] ?? 0) >> (8 - depth - (bit & 7))) & mask;
  });
}

/** The way back from how a viewer turns a picture (Exif orientation, 1 to 8). */
function storedPlace(orientation: number, { width, height }: { width: number; height: number }) {
  return ([x, y]: Place): Place => {
    switch (orientation) {
      case 2:
        return [width - x, y];
      case 3:
        return [width - x, height - y];
      case 4:
        return [x, height - y];
      case 5:
        return [y, x];
      case 6:
        return [y, width - x];
      case 7:
        return [height - y, width - x];
      case 8:
        return [height - y, x];
      default:
        return [x, y];
    }
  };
}

/** Corners as they are seen, in the stored pixels. */
export function storedCorners({ stored }: DecodedPicture, [a, b, c, d]: Corners): Corners {
  return [stored(a), stored(b), stored(c), stored(d)];
}

import { readFileSync } from 'node:fs';
import { cornersFault } from '../../../measure/wall/homography.ts';
import { straighten, type WallLight } from '../../../measure/wall/straighten.ts';
import { WALL_PHOTO_ENDINGS, type WallPhotoEntry } from '../../schema/files/wall-photo.ts';
import type { FileFault, FileReader } from './file-kind.ts';
import {
  type DecodedPicture,
  decodePicture,
  MOST_MEGAPIXELS,
  type PictureFault,
  pictureHead,
  storedCorners,
} from './picture-pixels.ts';

declare module './file-kind.ts' {
  interface BenchFileData {
    wallPhoto: WallPhotoData;
  }
  interface BenchFileEntry {
    wallPhoto: WallPhotoEntry;
  }
}

declare module '../../../measure/statement.ts' {
  interface StatementData {
    /** The camera wrote that the picture is to be turned, and it was. */
    'wall-photo-turned': object;
    'wall-photo-grey': object;
  }
}

/** The lit wall, straightened. */
export interface WallPhotoData {
  format: DecodedPicture['format'];
  /** Pixels of the picture as it is seen. */
  seen: { width: number; height: number };
  light: WallLight;
}

const AS_PICTURE = 'a picture as JPEG or PNG';

/** The picture of the wall that a panel lights. */
export const wallPhotoReader: FileReader<'wallPhoto'> = {
  kind: 'wallPhoto',
  called: 'a photo of the wall',
  places: [{ path: ['wallPhoto'], words: 'the lit wall' }],
  endings: WALL_PHOTO_ENDINGS,
  read({ path }, entry) {
    const decoded = decodePicture(readFileSync(path));
    if ('kind' in decoded) return { fault: pictureFault(decoded) };
    const { seen, format, picture } = decoded;
    const fault = cornersOff(entry, seen);
    if (fault) return { fault };
    const size = { width: entry.width.value, height: entry.height.value };
    const light = straighten(picture, storedCorners(decoded, entry.corners), size, entry.tones);
    return {
      data: { format, seen, light },
      notes: [
        ...(decoded.isTurned ? [{ code: 'wall-photo-turned' } as const] : []),
        ...(picture.channels < 3 ? [{ code: 'wall-photo-grey' } as const] : []),
      ],
    };
  },
  recognise({ bytes }) {
    const head = pictureHead(bytes);
    if (!head || (head.type !== 'jpg' && head.type !== 'png')) return undefined;
    const isTurned = head.orientation > 4;
    const [width, height] = isTurned ? [head.height, head.width] : [head.width, head.height];
    return {
      confidence: 0.5,
      understood: `a picture of ${width} × ${height} pixels; as a photo of the lit wall it needs corners, width and height beside its name`,
    };
  },
};

/** What is wrong with corners, held against the picture's size. */
function cornersOff({ corners }: WallPhotoEntry, { width, height }: { width: number; height: number }) {
  const wanted = 'corners of a rectangle on the picture: upper left, upper right, lower right, lower left';
  const outside = corners.find(([x, y]) => x > width || y > height);
  if (outside) {
    const found = `a corner at [${outside.join(', ')}] of a picture of ${width} × ${height} pixels`;
    return { found, wanted: 'corners that lie on the picture, in its own pixels', hint: TURNED } satisfies FileFault;
  }
  const fault = cornersFault(corners);
  if (!fault) return undefined;
  return fault === 'other-way-round'
    ? { found: 'corners that go round against the clock', wanted }
    : { found: 'corners that cross over, or of which three lie in a line', wanted };
}

const TURNED = 'read them in a viewer that shows the picture as it is meant to be seen, at its full size';

function pictureFault(fault: PictureFault): FileFault {
  switch (fault.kind) {
    case 'no-picture':
      return { found: 'no picture, by its content', wanted: AS_PICTURE };
    case 'packed-otherwise':
      return {
        found: `a picture packed as ${fault.what}`,
        wanted: AS_PICTURE,
        hint: 'export it as JPEG or PNG in full size, without changing its tones',
      };
    case 'large':
      return {
        found: `a picture of ${fault.megapixels.toFixed(0)} million pixels`,
        wanted: `at most ${MOST_MEGAPIXELS} million pixels`,
        hint: 'halve its sides: the corners halve with them',
      };
    default:
      return {
        found: 'a picture that can’t be decoded to its end',
        wanted: 'a whole picture as JPEG (8 bits) or PNG',
        hint: 'it may have been cut short on its way: copy it again',
      };
  }
}

import { type Corners, sidesOf, unitSquareTo } from './homography.ts';
import { linearTable, type Tones } from './srgb.ts';

/** A picture as it was decoded: numbers of each pixel in rows from the top. */
export interface Picture {
  width: number;
  height: number;
  /** Numbers a pixel; the first three are red, green and blue, or the only first is grey. */
  channels: 1 | 2 | 3 | 4;
  /** Highest number: 255 or 65535. */
  highest: number;
  data: ArrayLike<number>;
}

/** Linear light of a flat rectangle that a camera saw, straightened; rows from the top. */
export interface WallLight {
  columns: number;
  rows: number;
  /** Real sides, cm. */
  width: number;
  height: number;
  /** From 0 to 1, of full scale. */
  red: Float32Array;
  green: Float32Array;
  blue: Float32Array;
  /** Share of the rectangle in which a channel is at its end, so that there was more light than it tells. */
  clipped: number;
  /** Share of the rectangle in which all channels are nought. */
  black: number;
  /** Corners and sides of the picture that it was taken from, pixels. */
  corners: Corners;
  picture: { width: number; height: number };
  tones: Tones;
}

/** What is known of it as a whole. */
export type LightOfWall = Omit<WallLight, 'red' | 'green' | 'blue'>;

/** Pixels of the longer side: fine enough for LEDs 2 cm apart on a wall as high as a door, and quick to transform. */
export const LONGEST = 384;

/** A channel counts as clipped from this share of its highest number on: packing a picture moves 255 by one. */
const CLIPPED_FROM = 254 / 255;

/** Most places looked at across each pixel that is made. */
const MOST_PLACES = 12;

/**
 * The light of the rectangle between four corners of a picture, averaged in linear light.
 *
 * @param size real width and height of the rectangle, cm
 */
export function straighten(
  picture: Picture,
  corners: Corners,
  size: { width: number; height: number },
  tones: Tones,
): WallLight {
  const sides = sidesOf(corners);
  const ratio = size.width / size.height;
  // Never more pixels than the camera had.
  const across = Math.min(ratio >= 1 ? LONGEST : LONGEST * ratio, sides.across);
  const columns = Math.max(1, Math.round(Math.min(across, sides.down * ratio)));
  const rows = Math.max(1, Math.round(columns / ratio));
  const places = Math.min(MOST_PLACES, Math.max(2, Math.ceil(Math.max(sides.across / columns, sides.down / rows))));
  const light = {
    ...{ columns, rows, width: size.width, height: size.height, corners, tones },
    picture: { width: picture.width, height: picture.height },
    red: new Float32Array(columns * rows),
    green: new Float32Array(columns * rows),
    blue: new Float32Array(columns * rows),
  };
  const { clipped, black } = fill(light, picture, places);
  const all = columns * rows * places * places;
  return { ...light, clipped: clipped / all, black: black / all };
}

function fill(light: Omit<WallLight, 'clipped' | 'black'>, picture: Picture, places: number) {
  const { columns, rows, red, green, blue } = light;
  const { data, channels, width, height, highest } = picture;
  const map = unitSquareTo(light.corners);
  const table = linearTable(highest + 1, light.tones);
  const [second, third] = channels < 3 ? [0, 0] : [1, 2];
  const end = CLIPPED_FROM * highest;
  const share = 1 / (places * places);
  let clipped = 0;
  let black = 0;
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      let [r, g, b] = [0, 0, 0];
      for (let i = 0; i < places; i += 1) {
        for (let j = 0; j < places; j += 1) {
          const [x, y] = map((column + (j + 0.5) / places) / columns, (row + (i + 0.5) / places) / rows);
          const from = channels * (within(y, height) * width + within(x, width));
          const [first, middle, last] = [data[from] ?? 0, data[from + second] ?? 0, data[from + third] ?? 0];
          r += table[first] ?? 0;
          g += table[middle] ?? 0;
          b += table[last] ?? 0;
          if (first >= end || middle >= end || last >= end) clipped += 1;
          if (first === 0 && middle === 0 && last === 0) black += 1;
        }
      }
      const at = row * columns + column;
      red[at] = r * share;
      green[at] = g * share;
      blue[at] = b * share;
    }
  }
  return { clipped, black };
}

/** The pixel that a place lies in; what lies outside is the outermost one. */
function within(place: number, length: number): number {
  return Math.min(length - 1, Math.max(0, Math.floor(place)));
}

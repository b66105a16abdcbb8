/** A camera before a lit wall, for files and tests: what light there is, is known. */
import type { Corners } from '../../../src/measure/wall/homography.ts';
import type { Picture } from '../../../src/measure/wall/straighten.ts';
import type { Numbers } from '../../measure/random-numbers.ts';

/** The light of a place of the rectangle, cm from its upper left; 1 is the brightest that the picture can hold. */
export type LightAt = (x: number, y: number) => readonly [red: number, green: number, blue: number];

export interface Camera {
  /** Pixels. */
  width: number;
  height: number;
  /** Where the rectangle's corners come to lie, in pixels, and its real sides, cm. */
  corners: Corners;
  size: { width: number; height: number };
  /** On top of sRGB, the number grows with light to this power. */
  exponent?: number;
  /** Fall of the light at the picture's corners. */
  vignette?: number;
  /** Standard deviation of a pixel, as a share of full scale, and what it is drawn by. */
  noise?: number;
  numbers?: Numbers;
  /** Numbers proportional to light, no sRGB. */
  isLinear?: boolean;
  highest?: 255 | 65535;
}

/** Solves for the projective map of four places onto four others by elimination: another road than the closed form. */
export function projective(from: Corners, to: Corners): (x: number, y: number) => [number, number] {
  const rows = from.flatMap(([x, y], i) => {
    const [u, v] = to[i as 0 | 1 | 2 | 3];
    return [
      [x, y, 1, 0, 0, 0, -x * u, -y * u, u],
      [0, 0, 0, x, y, 1, -x * v, -y * v, v],
    ];
  });
  for (let i = 0; i < 8; i += 1) {
    const pivot = rows
      .slice(i)
      .reduce((best, row, k) => (Math.abs(row[i] ?? 0) > Math.abs(rows[best]?.[i] ?? 0) ? k + i : best), i);
    [rows[i], rows[pivot]] = [rows[pivot] as number[], rows[i] as number[]];
    const head = rows[i] as number[];
    for (let k = 0; k < 8; k += 1) {
      if (k === i) continue;
      const row = rows[k] as number[];
      const factor = (row[i] ?? 0) / (head[i] ?? 1);
      for (let j = i; j < 9; j += 1) row[j] = (row[j] ?? 0) - factor * (head[j] ?? 0);
    }
  }
  const [a, b, c, d, e, f, g, h] = rows.map((row, i) => (row[8] ?? 0) / (row[i] ?? 1)) as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  return (x, y) => {
    const w = g * x + h * y + 1;
    return [(a * x + b * y + c) / w, (d * x + e * y + f) / w];
  };
}

/** The picture that a camera takes of light; outside of the rectangle the light goes on as it is given. */
export function photograph(light: LightAt, camera: Camera): Picture {
  const { width, height, corners, size, exponent = 1, vignette = 0, noise = 0, numbers, isLinear = false } = camera;
  const highest = camera.highest ?? 255;
  const map = projective(corners, [
    [0, 0],
    [size.width, 0],
    [size.width, size.height],
    [0, size.height],
  ]);
  const data = highest === 255 ? new Uint8Array(3 * width * height) : new Uint16Array(3 * width * height);
  const corner = (width / 2) ** 2 + (height / 2) ** 2;
  for (let row = 0; row < height; row += 1) {
    for (let column = 0; column < width; column += 1) {
      const [px, py] = [column + 0.5, row + 0.5];
      const fall = 1 - (vignette * ((px - width / 2) ** 2 + (py - height / 2) ** 2)) / corner;
      const [x, y] = map(px, py);
      light(x, y).forEach((it, channel) => {
        const seen = Math.max(0, it * fall) ** exponent + (numbers ? noise * numbers.normal() : 0);
        data[3 * (row * width + column) + channel] = Math.round(highest * encode(seen, isLinear));
      });
    }
  }
  return { width, height, channels: 3, highest, data };
}

/** sRGB written out anew: what is tested may not make its own input. */
function encode(light: number, isLinear: boolean): number {
  const it = Math.min(1, Math.max(0, light));
  if (isLinear) return it;
  return it <= 0.0031308 ? 12.92 * it : 1.055 * it ** (1 / 2.4) - 0.055;
}

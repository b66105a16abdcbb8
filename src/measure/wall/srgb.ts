/**
 * How a picture's numbers stand for light.
 *
 * - `automatic`: as a telephone or camera writes it: sRGB, and a tone curve of its own on top, which nobody states
 * - `srgb`: developed from the sensor's data by sRGB alone, no tone curve
 * - `linear`: numbers proportional to light
 */
export const TONES = ['automatic', 'srgb', 'linear'] as const;
export type Tones = (typeof TONES)[number];

/** Where the straight piece of the sRGB curve meets its power (IEC 61966-2-1, from memory; agrees with public code). */
const JOIN = 0.04045;

/**
 * Linear light of an sRGB number, both from 0 to 1 (IEC 61966-2-1:1999).
 *
 * @example linearOf(0.5) // 0.2140
 */
export function linearOf(encoded: number): number {
  return encoded <= JOIN ? encoded / 12.92 : ((encoded + 0.055) / 1.055) ** 2.4;
}

/**
 * sRGB number of linear light, both from 0 to 1; what lies outside is cut to them.
 *
 * @example encodedOf(0.2140411) // 0.5
 */
export function encodedOf(linear: number): number {
  if (!(linear > 0)) return 0;
  return Math.min(1, linear <= JOIN / 12.92 ? linear * 12.92 : 1.055 * linear ** (1 / 2.4) - 0.055);
}

/** Relative luminance of linear light of the three channels (ITU-R BT.709, as sRGB has it). */
export function luminanceOf(red: number, green: number, blue: number): number {
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** Linear light for every number of a picture. */
export function linearTable(levels: number, tones: Tones): Float32Array {
  return Float32Array.from({ length: levels }, (_, i) => {
    const share = i / (levels - 1);
    return tones === 'linear' ? share : linearOf(share);
  });
}

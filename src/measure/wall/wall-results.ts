import { at } from '../at.ts';
import { type DotPattern, dotPattern, type Pitch } from './dot-pattern.ts';
import { type Cells, cellsOf, type Evenness, evennessOf } from './evenness.ts';
import { unitSquareTo } from './homography.ts';
import { luminanceOf } from './srgb.ts';
import type { WallLight } from './straighten.ts';

/** Numbers that are worked out from a photo of the wall. */
export const WALL_MEASURES = ['lowestToMean', 'variation', 'handDrop', 'dotContrast'] as const;
export type WallMeasure = (typeof WALL_MEASURES)[number];

/** What is read for each channel and for luminance. */
export const WALL_SIGNALS = ['luminance', 'red', 'green', 'blue'] as const;
export type WallSignal = (typeof WALL_SIGNALS)[number];

/** How far a camera may be off, as half widths of what is equally likely. */
export interface CameraErrors {
  /** Of the exponent between light and number, once sRGB is taken off. */
  exponent: number;
  /** Fall of the light towards the corners of the picture that nobody has corrected, at the corner. */
  vignette: number;
}

/** A telephone's own tone curve bends what is left after sRGB by about a fifth: our own choice, from simulation. */
export const AUTOMATIC_EXPONENT = 0.2;
/** What sRGB alone, or none, leaves. */
export const KNOWN_EXPONENT = 0.02;
/** Most of the fall towards the corners is corrected in the camera; a fifth at the corner may be left. Our own choice. */
export const VIGNETTE = 0.2;

/** What is worked out of one signal of a wall. */
export interface WallReading {
  cells: Cells;
  evenness: Evenness;
  dots: DotPattern | undefined;
}

/** From the signal on; undefined where the rectangle is too small or dark. */
export function wallReading(
  light: WallLight,
  signal: ArrayLike<number>,
  pitch: Pitch | undefined,
): WallReading | undefined {
  const plane = { ...light, values: signal };
  const cells = cellsOf(plane);
  const evenness = cells && evennessOf(cells);
  if (!cells || !evenness) return undefined;
  return { cells, evenness, dots: pitch && dotPattern(plane, pitch) };
}

/** Linear light of one signal. */
export function signalOf(light: WallLight, signal: WallSignal): Float32Array {
  if (signal !== 'luminance') return light[signal];
  const { red, green, blue } = light;
  return red.map((it, i) => luminanceOf(it, at(green, i), at(blue, i)));
}

/** The measures of a reading; dots that there are none of are left out. */
export function measuresOf({ evenness, dots }: WallReading): Partial<Record<WallMeasure, number>> {
  return {
    lowestToMean: evenness.lowestToMean,
    variation: evenness.variation,
    handDrop: evenness.drop.share,
    ...(dots && { dotContrast: dots.contrast }),
  };
}

/** A measure moves so far with each of the camera's errors at its half width, and with noise (standard uncertainty). */
export interface WallErrors {
  tones: number;
  vignette: number;
  noise: number;
}

/**
 * How far each measure moves with what a camera does: the same calculation again with the light bent and shaded as far as
 * the camera may have done, both ways, of which the larger counts. A small wave grows with the exponent itself, and light
 * that falls slowly leaves it.
 */
export function wallErrors(light: WallLight, reading: WallReading): Partial<Record<WallMeasure, WallErrors>> {
  const values = signalOf(light, 'luminance');
  const exponent = light.tones === 'automatic' ? AUTOMATIC_EXPONENT : KNOWN_EXPONENT;
  const fall = shadeOf(light);
  const again = (move: (value: number, place: number) => number) => {
    const moved = wallReading(light, values.map(move), undefined);
    return moved && measuresOf(moved);
  };
  const bent = [1 - exponent, 1 + exponent].map((power) => again((it) => it ** power));
  const shaded = [-VIGNETTE, VIGNETTE].map((most) => again((it, place) => it * (1 + most * at(fall, place))));
  const measured = measuresOf(reading);
  const furthest = (all: Array<Partial<Record<WallMeasure, number>> | undefined>, measure: WallMeasure) =>
    Math.max(...all.map((it) => Math.abs((it?.[measure] ?? 0) - (measured[measure] ?? 0))));
  const { cells, evenness } = reading;
  // The dimmest of many squares is too dim by noise, and so on: one square's noise is what moves each.
  const noise: Record<WallMeasure, number> = {
    lowestToMean: cells.noise / evenness.mean,
    variation: cells.noise / evenness.mean / Math.sqrt(2 * (cells.means.length - 1)),
    handDrop: (Math.SQRT2 * cells.noise) / evenness.mean,
    dotContrast: reading.dots?.noise ?? 0,
  };
  return Object.fromEntries(
    WALL_MEASURES.filter((it) => measured[it] !== undefined).map((measure) => [
      measure,
      measure === 'dotContrast'
        ? { tones: exponent * (measured.dotContrast ?? 0), vignette: 0, noise: noise.dotContrast }
        : { tones: furthest(bent, measure), vignette: furthest(shaded, measure), noise: noise[measure] },
    ]),
  );
}

/** The square of each place's distance from the middle of the picture, of 1 at its corners. */
function shadeOf({ columns, rows, corners, picture }: WallLight): Float32Array {
  const map = unitSquareTo(corners);
  const middle = [picture.width / 2, picture.height / 2] as const;
  const corner = middle[0] ** 2 + middle[1] ** 2;
  return Float32Array.from({ length: columns * rows }, (_, place) => {
    const [x, y] = map(((place % columns) + 0.5) / columns, (Math.floor(place / columns) + 0.5) / rows);
    return ((x - middle[0]) ** 2 + (y - middle[1]) ** 2) / corner;
  });
}

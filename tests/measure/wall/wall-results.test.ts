import { describe, expect, test } from 'vitest';
import type { Pitch } from '../../../src/measure/wall/dot-pattern.ts';
import { cellsOf, evennessOf } from '../../../src/measure/wall/evenness.ts';
import type { Corners } from '../../../src/measure/wall/homography.ts';
import { straighten } from '../../../src/measure/wall/straighten.ts';
import {
  measuresOf,
  signalOf,
  WALL_MEASURES,
  type WallMeasure,
  wallErrors,
  wallReading,
} from '../../../src/measure/wall/wall-results.ts';
import { type Camera, type LightAt, photograph } from '../../support/bench-files/photograph.ts';
import { randomNumbers } from '../random-numbers.ts';

const SIZE = { width: 40, height: 30 };
const CORNERS: Corners = [
  [26, 20],
  [280, 15],
  [290, 220],
  [15, 210],
];
const CAMERA: Camera = { width: 320, height: 240, corners: CORNERS, size: SIZE };
const PITCH: Pitch = { across: 2.5, down: 2.5, staggered: false };
const CONTRAST = 0.12;

/** Falls off towards the edges, with a wave of known amplitude at the LEDs' pitch. */
const wall =
  (contrast: number, highest = 0.6): LightAt =>
  (x, y) => {
    const glow = Math.exp(-(((x - 20) / 26) ** 2) - ((y - 15) / 24) ** 2);
    const red = (highest * glow * (1 + contrast * Math.cos((2 * Math.PI * x) / PITCH.across))) / (1 + contrast);
    return [red, 0.06 * red, 0.1 * red];
  };

/** The same without a camera: straight from the formula, on a fine raster. */
function truth(contrast: number): Record<WallMeasure, number> {
  const [columns, rows] = [400, 300];
  const values = Float64Array.from(
    { length: columns * rows },
    (_, i) => wall(contrast)(((i % columns) + 0.5) / 10, (Math.floor(i / columns) + 0.5) / 10)[0],
  );
  const cells = cellsOf({ columns, rows, ...SIZE, values });
  const evenness = cells && evennessOf(cells);
  if (!evenness) throw new Error('no light');
  const { lowestToMean, variation, drop } = evenness;
  return { lowestToMean, variation, handDrop: drop.share, dotContrast: contrast };
}

const readingOf = (camera: Camera, contrast = CONTRAST, pitch: Pitch | undefined = PITCH) => {
  const light = straighten(photograph(wall(contrast), camera), CORNERS, SIZE, camera.isLinear ? 'linear' : 'automatic');
  const reading = wallReading(light, signalOf(light, 'luminance'), pitch);
  if (!reading) throw new Error('no reading');
  return { light, reading };
};

describe('evenness of squares', () => {
  test('follows from their means', () => {
    // 4 x 3 squares of 2 cm with 3 x 3 pixels each, worked by hand.
    const squares = [4, 4, 4, 4, 4, 8, 6, 4, 4, 4, 4, 2];
    const values = Float64Array.from(
      { length: 12 * 9 },
      (_, i) => squares[4 * Math.floor(Math.floor(i / 12) / 3) + Math.floor((i % 12) / 3)] ?? 0,
    );
    const cells = cellsOf({ columns: 12, rows: 9, width: 8, height: 6, values });
    expect(cells?.means).toEqual(Float64Array.from(squares));
    const evenness = cells && evennessOf(cells);
    expect(evenness?.mean).toBeCloseTo(52 / 12, 12);
    expect(evenness?.lowestToMean).toBeCloseTo(24 / 52, 12);
    expect(evenness?.highestToMean).toBeCloseTo(96 / 52, 12);
    // Squares about the mean: 248 - 12 (52/12)^2 = 22.667, over 11.
    expect(evenness?.variation).toBeCloseTo(Math.sqrt((248 - 52 ** 2 / 12) / 11) / (52 / 12), 12);
    expect(evenness?.drop).toEqual({ share: 0.75, bright: [3, 3], dim: [7, 5] });
  });

  test('looks for a drop no farther than a hand is wide', () => {
    const values = Float64Array.from({ length: 180 * 18 }, (_, i) => (i % 180 < 90 ? 10 - (i % 180) / 18 : 5));
    const cells = cellsOf({ columns: 180, rows: 18, width: 40, height: 4, values });
    // 20 squares fall by half over the whole; within 10 cm, or 5 squares, by about a quarter of the brightest.
    const drop = cells && evennessOf(cells)?.drop;
    expect(drop && Math.hypot(drop.bright[0] - drop.dim[0], drop.bright[1] - drop.dim[1])).toBeLessThanOrEqual(10.001);
    expect(drop?.share).toBeLessThan(0.4);
  });

  test('is not told of what is too small, too coarse or dark', () => {
    expect(cellsOf({ columns: 30, rows: 30, width: 3, height: 30, values: new Float32Array(900) })).toBeUndefined();
    expect(cellsOf({ columns: 30, rows: 30, width: 40, height: 40, values: new Float32Array(900) })).toBeUndefined();
    const dark = cellsOf({ columns: 30, rows: 30, width: 10, height: 10, values: new Float32Array(900) });
    expect(dark && evennessOf(dark)).toBeUndefined();
  });
});

describe('a photo of the wall', () => {
  const known = truth(CONTRAST);

  test('gives back what a straight camera saw from the side', () => {
    const { reading, light } = readingOf(CAMERA);
    const measured = measuresOf(reading);
    expect(light.columns / light.rows).toBeCloseTo(4 / 3, 1);
    expect(light.clipped).toBe(0);
    for (const measure of WALL_MEASURES) expect(measured[measure], measure).toBeCloseTo(known[measure], 2);
    expect(reading.dots?.period).toBeCloseTo(2.5, 0);
  });

  test('is linear where it says so, in eight or sixteen bits', () => {
    for (const highest of [255, 65535] as const) {
      const measured = measuresOf(readingOf({ ...CAMERA, isLinear: true, highest }).reading);
      expect(measured.lowestToMean).toBeCloseTo(known.lowestToMean, 2);
    }
  });

  test('tells how much is clipped', () => {
    const light = straighten(photograph(wall(0, 2), CAMERA), CORNERS, SIZE, 'automatic');
    // exp(-r²) > 1/2, an ellipse of half axes 26 √ln 2 and 24 √ln 2 cut by the rectangle.
    let inside = 0;
    for (let i = 0; i < 400; i += 1)
      for (let j = 0; j < 300; j += 1) if (wall(0, 2)(i / 10, j / 10)[0] >= 0.992) inside += 1 / 120000;
    expect(light.clipped).toBeGreaterThan(0.3);
    expect(light.clipped).toBeCloseTo(inside, 1);
  });

  test('finds staggered rows by their own waves', () => {
    const pitch: Pitch = { across: 3, down: 2, staggered: true };
    const [columns, rows] = [384, 288];
    const values = Float64Array.from({ length: columns * rows }, (_, i) => {
      const [x, y] = [((i % columns) * 40) / columns, (Math.floor(i / columns) * 30) / rows];
      return 1 + 0.2 * Math.cos(2 * Math.PI * (x / 3 + y / 4)) + 0.01 * Math.cos((2 * Math.PI * y) / 2);
    });
    const light = { columns, rows, ...SIZE, values };
    const reading = wallReading({ ...light } as never, values, pitch);
    expect(reading?.dots?.contrast).toBeCloseTo(0.2, 2);
    expect(reading?.dots?.period).toBeCloseTo(1 / Math.hypot(1 / 3, 1 / 4), 1);
  });

  test('says that no pattern stands out of noise, and does not call noise one', () => {
    const numbers = randomNumbers(11);
    let found = 0;
    for (let i = 0; i < 10; i += 1) {
      const values = Float64Array.from({ length: 128 * 96 }, () => 1 + 0.05 * numbers.normal());
      const reading = wallReading({ columns: 128, rows: 96, ...SIZE } as never, values, PITCH);
      if (!reading?.dots?.isBound) found += 1;
    }
    expect(found).toBe(0);
  });

  test('has no pattern where pixels or pitches are too few', () => {
    expect(readingOf(CAMERA, CONTRAST, { ...PITCH, across: 0.3 }).reading.dots).toBeUndefined();
    expect(readingOf(CAMERA, CONTRAST, { ...PITCH, down: 12 }).reading.dots).toBeUndefined();
  });

  // Cameras that are not what is assumed, within what is said to be left out: the interval has to hold the truth.
  test('holds the truth when the camera bends, shades and is noisy', () => {
    const numbers = randomNumbers(4);
    let held = 0;
    let all = 0;
    for (let i = 0; i < 6; i += 1) {
      const camera = {
        ...CAMERA,
        exponent: 1 + 0.2 * numbers.either(),
        vignette: 0.2 * numbers.uniform(),
        ...{ noise: 0.01, numbers },
      };
      const { light, reading } = readingOf(camera);
      const measured = measuresOf(reading);
      const errors = wallErrors(light, reading);
      for (const measure of WALL_MEASURES) {
        const error = errors[measure];
        if (!error) continue;
        all += 1;
        const u = Math.hypot(error.tones / Math.sqrt(3), error.vignette / Math.sqrt(3), error.noise);
        if (Math.abs((measured[measure] ?? 0) - known[measure]) <= 1.96 * u) held += 1;
      }
    }
    expect(all).toBe(24);
    expect(held).toBeGreaterThanOrEqual(22);
  });
});

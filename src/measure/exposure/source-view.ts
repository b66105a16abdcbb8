/** How a lit field and the emitters in it look from straight before its middle: solid angles, sr. */

/** A field with emitters in it, seen from a distance; cm. */
export interface SourceView {
  width: number;
  height: number;
  distance: number;
}

/** Emitters, evenly over a field. */
export interface Emitters {
  count: number;
  /** cm, as one looks lit. */
  diameter: number;
}

/**
 * Smallest and largest angle of a source that the limits for the retina go by, rad: for 10 s and more nothing smaller than
 * 11 mrad counts, since the eye moves, and nothing larger than 100 mrad (IEC 62471:2006, 4.2.2 and 5.4.4; from memory).
 */
export const SMALLEST_ANGLE = 0.011;
export const LARGEST_ANGLE = 0.1;

/** Solid angle of the circle over which radiance is averaged, sr: that of `SMALLEST_ANGLE`. */
export const AVERAGED_OVER = (Math.PI / 4) * SMALLEST_ANGLE ** 2;

/** Angle under which a field appears, rad: mean of its sides over the distance, within the limits' ends. */
export function sourceAngle({ width, height, distance }: SourceView): number {
  const angle = (width + height) / 2 / distance;
  return Math.min(LARGEST_ANGLE, Math.max(SMALLEST_ANGLE, angle));
}

/**
 * Projected solid angle of a rectangle from before its middle, the integral of cos over its solid angle, sr: an even source
 * that fills it with radiance L gives the irradiance L times this. Pi times four times the view factor of a quarter of
 * it (Howell's catalogue, number B-3 from memory; held against a quadrature in the tests).
 */
export function projectedSolidAngle({ width, height, distance }: SourceView): number {
  const [a, b] = [width / 2 / distance, height / 2 / distance];
  const part = (x: number, y: number) => (x / Math.hypot(1, x)) * Math.atan(y / Math.hypot(1, x));
  return 2 * (part(a, b) + part(b, a));
}

/** Steps of the sum over a field, each way. */
const STEPS = 40;

/**
 * Projected solid angle that emitters fill, sr, each at least as large as the circle over which radiance is averaged: if
 * all gave the same radiance, averaged so, irradiance would be it times this; so one of them gives as much or more. They
 * are taken to look equally large from every side, which makes it larger and what follows smaller.
 */
export function litSolidAngle({ width, height, distance }: SourceView, { count, diameter }: Emitters): number {
  const area = (Math.PI / 4) * diameter ** 2;
  let sum = 0;
  for (let i = 0; i < STEPS; i++) {
    for (let j = 0; j < STEPS; j++) {
      const [x, y] = [((i + 0.5) / STEPS - 0.5) * width, ((j + 0.5) / STEPS - 0.5) * height];
      const square = x ** 2 + y ** 2 + distance ** 2;
      sum += (distance / Math.sqrt(square)) * Math.max(area / square, AVERAGED_OVER);
    }
  }
  return (count * sum) / STEPS ** 2;
}

/** Solid angle of one emitter straight ahead, sr, at least that of the circle over which radiance is averaged. */
export function emitterSolidAngle(distance: number, diameter: number): number {
  return Math.max((Math.PI / 4) * (diameter / distance) ** 2, AVERAGED_OVER);
}

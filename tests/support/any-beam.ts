/**
 * Panels whose beams and drive may be anything, summed LED by LED, for checks from outside: nothing here is shared with
 * src/measure. Lengths in cm, powers in W, irradiance in mW/cm², angles in degrees; places as in light-source.ts.
 */
import { randomNormal } from 'd3-random';
import { lambertianExponent, uniformSource } from './light-source.ts';

/** Radiant intensity over angle from the axis, in any unit. */
export type Intensity = (degrees: number) => number;

/** What a panel is made of. */
export interface AnyPanel {
  width: number;
  height: number;
  columns: number;
  rows: number;
  ledSize: number;
  intensity: Intensity;
  /** Emitted by all LEDs, W. */
  power: number;
  /** Relative standard deviation from LED to LED. */
  spread: number;
  /** Factor on each LED by its place. */
  drive?: (x: number, y: number) => number;
  isStaggered?: boolean;
  /** The panel leans by this much about its horizontal middle, degrees. */
  tilt?: number;
  seed: number;
}

const STEPS = 4000;
const DEGREE = Math.PI / 180;

/** Irradiance of a panel at a place, mW/cm², and what is true of it. */
export interface AnyLight {
  at(x: number, y: number, distance: number, weight?: (degrees: number) => number): number;
  /** Over the frame, by the midpoint rule. */
  mean(distance: number): number;
  /** Highest over a raster of the frame and before and between LEDs. */
  peak(distance: number): number;
}

/** The light of a panel; its LEDs are the same for the same seed. */
export function anyLight(panel: AnyPanel): AnyLight {
  const { width, height, columns, rows, ledSize, intensity, power, spread, drive, isStaggered, tilt = 0 } = panel;
  const normal = randomNormal.source(uniformSource(panel.seed))(0, 1);
  const pitch = {
    x: columns > 1 ? (width - ledSize) / (columns - 1) : 0,
    y: rows > 1 ? (height - ledSize) / (rows - 1) : 0,
  };
  const leds: { x: number; y: number; z: number; power: number }[] = [];
  const [sine, cosine] = [Math.sin(tilt * DEGREE), Math.cos(tilt * DEGREE)];
  for (let row = 0; row < rows; row++) {
    const count = isStaggered && row % 2 === 1 ? columns - 1 : columns;
    for (let column = 0; column < count; column++) {
      const x = (column - (count - 1) / 2) * pitch.x;
      const y = ((rows - 1) / 2 - row) * pitch.y;
      const own = Math.max(0.2, 1 + spread * normal()) * (drive?.(x, y) ?? 1);
      leds.push({ x, y: y * cosine, z: y * sine, power: own });
    }
  }
  const sum = leds.reduce((total, it) => total + it.power, 0);
  for (const led of leds) led.power *= power / sum;

  // Normalised to 1 W: the integral of 2 pi I sin over the hemisphere, by the midpoint rule; kept over the cosine.
  let whole = 0;
  for (let i = 0; i < STEPS; i++) {
    const angle = ((i + 0.5) * 90) / STEPS;
    whole += 2 * Math.PI * intensity(angle) * Math.sin(angle * DEGREE) * ((90 / STEPS) * DEGREE);
  }
  const table = Float64Array.from({ length: STEPS + 1 }, (_, i) => intensity(Math.acos(i / STEPS) / DEGREE) / whole);
  const shine = (c: number) => {
    const at = c * STEPS;
    const i = Math.min(STEPS - 1, Math.floor(at));
    return (table[i] as number) + (at - i) * ((table[i + 1] as number) - (table[i] as number));
  };

  const at: AnyLight['at'] = (x, y, distance, weight) => {
    let total = 0;
    for (const led of leds) {
      const dx = x - led.x;
      const dy = y - led.y;
      const dz = distance - led.z;
      const squared = dx * dx + dy * dy + dz * dz;
      const r = Math.sqrt(squared);
      const leaves = (dz * cosine - dy * sine) / r;
      const arrives = dz / r;
      if (leaves <= 0 || arrives <= 0) continue;
      const one = (1000 * led.power * shine(leaves) * arrives) / squared;
      total += weight ? one * weight(Math.acos(Math.min(1, arrives)) / DEGREE) : one;
    }
    return total;
  };
  const raster = (distance: number, across: number, down: number) =>
    Array.from({ length: across * down }, (_, i) =>
      at(
        width * (((i % across) + 0.5) / across - 0.5),
        height * ((Math.floor(i / across) + 0.5) / down - 0.5),
        distance,
      ),
    );
  return {
    at,
    mean(distance) {
      const values = raster(distance, 16, 24);
      return values.reduce((a, b) => a + b, 0) / values.length;
    },
    peak(distance) {
      return Math.max(...raster(distance, 17, 25));
    },
  };
}

/** One power of the cosine. */
export const cosineBeam = (halfAngle: number): Intensity => {
  const exponent = lambertianExponent(halfAngle);
  return (degrees) => Math.cos(degrees * DEGREE) ** exponent;
};

/** Two beams whose powers are as stated. */
export function twoLobes(narrow: number, wide: number, wideShare: number): Intensity {
  const [m, n] = [lambertianExponent(narrow), lambertianExponent(wide)];
  return (degrees) => {
    const c = Math.cos(degrees * DEGREE);
    return (1 - wideShare) * (m + 1) * c ** m + wideShare * (n + 1) * c ** n;
  };
}

/** A beam with a ring that has a share of the power. */
export function ringBeam(halfAngle: number, ringAngle: number, ringShare: number, ringWidth = 6): Intensity {
  const m = lambertianExponent(halfAngle);
  const ring = (degrees: number) => Math.exp(-(((degrees - ringAngle) / ringWidth) ** 2) / 2);
  let whole = 0;
  for (let angle = 0.25; angle < 90; angle += 0.5) {
    whole += ring(angle) * Math.sin(angle * DEGREE) * 0.5 * DEGREE;
  }
  return (degrees) => (1 - ringShare) * (m + 1) * Math.cos(degrees * DEGREE) ** m + (ringShare * ring(degrees)) / whole;
}

/** Brighter obliquely than straight ahead, then falling off steeply. */
export const batwing =
  (edge: number, dip: number): Intensity =>
  (degrees) =>
    (1 - dip * Math.exp(-((degrees / (0.55 * edge)) ** 2))) / (1 + (degrees / edge) ** 10);

/** Even up to an angle, then falling off. */
export const flatTop =
  (edge: number, steepness = 6): Intensity =>
  (degrees) =>
    Math.exp(-Math.LN2 * (degrees / edge) ** steepness);

/** A bare LED behind a reflector that lets some light past its edge. */
export const cutOff =
  (edge: number, spill: number): Intensity =>
  (degrees) =>
    Math.cos(degrees * DEGREE) * (spill + (1 - spill) / (1 + Math.exp((degrees - edge) / 2)));

/** A bell on a long skirt. */
export const skirted =
  (halfAngle: number): Intensity =>
  (degrees) =>
    Math.cos(degrees * DEGREE) / (1 + (degrees / halfAngle) ** 2) ** 1.5;

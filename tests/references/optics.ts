import type { CheckValue } from './check-value.ts';

const KAHN = 'm = −ln 2 / ln cos θ, Kahn and Barry 1997, Proceedings of the IEEE 85(2), 265 (formula from memory)';

const order = (halfAngle: number, expected: number, tolerance: number): CheckValue<{ halfAngle: number }> => ({
  label: `order of a half angle of ${halfAngle}°`,
  arguments: { halfAngle },
  expected,
  tolerance,
  because: tolerance < 1e-9 ? 'exact' : 'the expected value is rounded to six decimals',
  source: KAHN,
  verified: 'computed',
});

/** Half angles in degrees and the orders of their beams. */
export const BEAM_ORDERS: readonly CheckValue<{ halfAngle: number }>[] = [
  order(60, 1, 1e-12),
  order(45, 2, 1e-12),
  order(30, 4.818842, 5e-7),
  order(15, 19.993727, 5e-7),
];

/** Intensity on the axis of 1 W in a beam of half angle 30°, W/sr. */
export const AXIAL_INTENSITY: CheckValue<{ halfAngle: number; power: number }> = {
  label: 'axial intensity of 1 W, half angle 30°',
  arguments: { halfAngle: 30, power: 1 },
  expected: 0.926097,
  tolerance: 5e-7,
  because: 'the expected value is rounded to six decimals',
  source: `I0 = (m + 1) Φ / 2π with ${KAHN}`,
  verified: 'computed',
};

const single = (
  label: string,
  aside: number,
  wattsEachSquareMetre: number,
): CheckValue<{ halfAngle: number; power: number; distance: number; aside: number }> => ({
  label,
  arguments: { halfAngle: 30, power: 1, distance: 15.24, aside },
  expected: wattsEachSquareMetre / 10,
  tolerance: 5e-7,
  because: 'the expected value is rounded to five decimals in W/m²',
  source: `E = I0 cos^(m+1) θ / r² with ${KAHN}`,
  verified: 'computed',
});

/** Irradiance that one LED of 1 W makes on a plane, mW/cm²; distances in cm. */
export const SINGLE_LED: readonly CheckValue<{ halfAngle: number; power: number; distance: number; aside: number }>[] =
  [
    single('1 W, half angle 30°, on the axis at 6 in', 0, 39.87372),
    single('1 W, half angle 30°, 5 cm aside at 6 in', 5, 26.73715),
  ];

const SIEGEL =
  'configuration factor of an element parallel to a rectangle, its normal through a corner; Siegel and Howell, Thermal Radiation Heat Transfer (from memory)';

const factor = (
  label: string,
  a: number,
  b: number,
  c: number,
  corners: number,
  expected: number,
): CheckValue<{ a: number; b: number; c: number; corners: number }> => ({
  label,
  arguments: { a, b, c, corners },
  expected,
  tolerance: 5e-7,
  because: 'the expected value is rounded to six decimals',
  source: `${SIEGEL}; times the number of corners that meet before the element`,
  verified: 'computed',
});

/** Share of the exitance of a Lambertian rectangle that reaches an element parallel to it; sides and distance. */
export const RECTANGLE_FACTORS: readonly CheckValue<{ a: number; b: number; c: number; corners: number }>[] = [
  factor('a square as wide as it is far, over its corner', 10, 10, 10, 1, 0.138532),
  factor('a square twice as wide as it is far, over its middle', 10, 10, 10, 4, 0.554126),
  factor('20 cm by 60 cm at 6 in, over its middle', 10, 30, 15.24, 4, 0.521879),
];

/** The same in closed form: a and b the sides, c the distance. */
export function parallelFactor(a: number, b: number, c: number): number {
  const x = a / c;
  const y = b / c;
  const p = Math.hypot(1, x);
  const q = Math.hypot(1, y);
  return ((x / p) * Math.atan(y / p) + (y / q) * Math.atan(x / q)) / (2 * Math.PI);
}

/**
 * Configuration factor of an element whose face is turned at right angles to a rectangle, over its corner, looking
 * along the side a; Siegel and Howell (from memory). Held against numerical integration with 30 digits for a = 10,
 * b = 30, c = 15.24: 0.0388254713852.
 */
export function perpendicularFactor(a: number, b: number, c: number): number {
  const d = Math.hypot(a, c);
  return (Math.atan(b / c) - (c / d) * Math.atan(b / d)) / (2 * Math.PI);
}

/** Configuration factor of a disc, on its axis: R² / (R² + z²); any radiometry handbook (from memory). */
export function discFactor(radius: number, distance: number): number {
  return radius ** 2 / (radius ** 2 + distance ** 2);
}

const special = (label: string, x: number, expected: number): CheckValue<number> => ({
  label,
  arguments: x,
  expected,
  tolerance: 1e-11,
  because: 'what the table of the function promises',
  source: 'error function, Abramowitz and Stegun table 7.1 (from memory); repeated with 30 digits',
  verified: 'computed',
});

export const ERROR_FUNCTION: readonly CheckValue<number>[] = [
  special('erf 0.1', 0.1, 0.112462916018285),
  special('erf 0.5', 0.5, 0.520499877813047),
  special('erf 1', 1, 0.842700792949715),
  special('erf 2', 2, 0.995322265018953),
  special('erf 3.5', 3.5, 0.999999256901628),
];

const tail = (value: number, degreesOfFreedom: number, expected: number): CheckValue<[number, number]> => ({
  label: `chi-square with ${degreesOfFreedom} degrees of freedom above ${value}`,
  arguments: [value, degreesOfFreedom],
  expected,
  tolerance: 1e-10,
  because: 'rounding of a short sum and of the error function',
  source: 'regularised incomplete gamma function with 30 digits; values are those of the usual tables',
  verified: 'computed',
});

/** Upper tails of chi-square. */
export const CHI_SQUARE_TAILS: readonly CheckValue<[number, number]>[] = [
  tail(3.841, 1, 0.0500136837639567),
  tail(5.991, 2, 0.0500116150266),
  tail(11.07, 5, 0.0500096186224),
  tail(24.322, 7, 0.000999953873632),
  tail(18.307, 10, 0.0500005890914),
  tail(42.98, 28, 0.0349604969266),
];

import type { CheckValue } from './check-value.ts';

const DISC = 'uniform Lambertian disc on its axis, E = M R² / (R² + z²); any radiometry handbook (from memory)';

/** Irradiance over exitance on the axis of a disc, by radius and distance in cm. */
export const DISC_IRRADIANCE: readonly CheckValue<{ radius: number; distance: number }>[] = [
  {
    label: 'as far away as its radius',
    arguments: { radius: 10, distance: 10 },
    expected: 0.5,
    tolerance: 1e-12,
    because: 'exact',
    source: DISC,
    verified: 'computed',
  },
  {
    label: 'radius 10 cm at 6 in',
    arguments: { radius: 10, distance: 15.24 },
    expected: 0.300971,
    tolerance: 5e-7,
    because: 'the expected value is rounded to six decimals',
    source: DISC,
    verified: 'computed',
  },
];

const derivative = (distance: number, expected: number): CheckValue<{ area: number; distance: number }> => ({
  label: `500 cm² at ${distance} cm`,
  arguments: { area: 500, distance },
  expected,
  tolerance: 1e-12,
  because: 'rounding of a handful of operations',
  source: `−d ln E / d ln z of the ${DISC}; differentiated numerically with 30 digits`,
  verified: 'computed',
});

/** How steeply the irradiance of a disc falls: p of E ~ z^-p. */
export const DISC_EXPONENTS: readonly CheckValue<{ area: number; distance: number }>[] = [
  derivative(1, 0.0124879067819494),
  derivative(5, 0.271510496327266),
  derivative(15.24, 1.18676626030081),
  derivative(30, 1.69946806342179),
  derivative(100, 1.96866768073065),
];

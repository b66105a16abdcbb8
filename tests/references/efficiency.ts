import type { CheckValue } from './check-value.ts';

const KUSUMA = 'Kusuma, Pattison and Bugbee 2020, Horticulture Research 7:56';

/** Near-limit wall-plug efficiency of 660 nm LEDs, as a share. */
export const RED_LED_LIMIT: CheckValue<{ wavelength: number }> = {
  label: 'near-limit of red LEDs, as a share',
  arguments: { wavelength: 660 },
  expected: 0.81,
  tolerance: 0,
  because: 'the published figure itself',
  source: KUSUMA,
  verified: 'read',
};

/** The same as photons per energy, µmol/J; h c N_A = 0.11962657 J m / mol. */
export const RED_LED_LIMIT_PHOTONS: CheckValue<{ wavelength: number }> = {
  label: 'near-limit of red LEDs, in photons',
  arguments: { wavelength: 660 },
  expected: 4.469,
  tolerance: 5e-4,
  because: 'the expected value is rounded to three decimals',
  source: `0.81 × 660 nm / (h c N_A), from ${KUSUMA}`,
  verified: 'computed',
};

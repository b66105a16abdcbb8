/**
 * Weights of the thermal hazard for the retina, R(lambda), from 500 nm to 1400 nm (IEC 62471:2006, table 4.2; from memory,
 * so are the limits of retina.ts). Below 500 nm they rise up to ten; what light lies there is not weighted here.
 *
 * The pieces join, which checks them against one another: 10^(-350/500) is 0.1995 at 1050 nm, where the next one has
 * 0.2, and 0.2 × 10^(0.02 × (1150 - 1200)) is 0.02 at 1200 nm, where the last one has that.
 *
 * @param nm wavelength
 * @returns 0 outside of 500 nm to 1400 nm
 */
export function retinalWeight(nm: number): number {
  if (nm < WEIGHTED_FROM || nm > WEIGHTED_TO) return 0;
  if (nm <= 700) return 1;
  if (nm <= 1050) return 10 ** ((700 - nm) / 500);
  if (nm <= 1150) return 0.2;
  if (nm <= 1200) return 0.2 * 10 ** (0.02 * (1150 - nm));
  return 0.02;
}

/** Wavelengths that are weighted, nm. */
export const WEIGHTED_FROM = 500;
export const WEIGHTED_TO = 1400;

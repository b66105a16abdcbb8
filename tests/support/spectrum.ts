import { seededRandom } from '../../src/measure/random.ts';
import type { Spectrum } from '../../src/measure/spectrum/spectrum.ts';

/** A Gaussian of a height, whose sides may have widths of their own; sigma in nm. */
export const gaussian =
  (peak: number, sigma: number, height = 1, longSigma = sigma) =>
  (nm: number): number =>
    height * Math.exp(-0.5 * ((nm - peak) / (nm < peak ? sigma : longSigma)) ** 2);

interface Rows {
  from?: number;
  to?: number;
  step?: number;
  /** Standard deviation of normal noise, and a level that is added. */
  noise?: number;
  dark?: number;
  isAbsolute?: boolean;
}

/** A spectrum of light that is known, as an instrument would write it. */
export function spectrumOf(
  light: ReadonlyArray<(nm: number) => number>,
  { from = 350, to = 1000, step = 0.5, noise = 0, dark = 0, isAbsolute = true }: Rows = {},
): Spectrum {
  const random = seededRandom(7);
  const wavelengths = Float64Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) => from + i * step);
  const values = wavelengths.map(
    (nm) => light.reduce((sum, it) => sum + it(nm), 0) + dark + (noise > 0 ? noise * random.normal() : 0),
  );
  return { wavelengths, values, isAbsolute };
}

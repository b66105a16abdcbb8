/** Spectra as rows of wavelengths with what was read there, and what is added up over them. */

/**
 * A measured spectrum. Wavelengths in nm, strictly rising; steps need not be alike. Values are spectral irradiance in
 * mW/cm²/nm where the instrument is calibrated in power, and else in a unit of its own that is the same for all of them.
 */
export interface Spectrum {
  readonly wavelengths: ArrayLike<number>;
  readonly values: ArrayLike<number>;
  /** The values are spectral irradiance, mW/cm²/nm. */
  readonly isAbsolute: boolean;
}

/** From one wavelength to another, nm. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** First and last wavelength of a spectrum, nm. */
export function reachOf({ wavelengths }: Spectrum): Span {
  return { from: wavelengths[0] as number, to: wavelengths[wavelengths.length - 1] as number };
}

/** The value at a wavelength, on the straight line between its neighbours; 0 outside the spectrum. */
export function valueAt({ wavelengths, values }: Spectrum, nm: number): number {
  const after = firstNotBelow(wavelengths, nm);
  if (after === wavelengths.length) return 0;
  const right = wavelengths[after] as number;
  if (right === nm) return values[after] as number;
  if (after === 0) return 0;
  const left = wavelengths[after - 1] as number;
  const [low, high] = [values[after - 1] as number, values[after] as number];
  return low + ((high - low) * (nm - left)) / (right - left);
}

/** Place of the first wavelength at or above one; their number where none is. */
export function firstNotBelow(wavelengths: ArrayLike<number>, nm: number): number {
  let [low, high] = [0, wavelengths.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((wavelengths[middle] as number) < nm) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** What is added up over a part of a spectrum. */
export interface Sums {
  /** Integral of the value, in its unit times nm. */
  area: number;
  /** Integral of value and wavelength. */
  moment: number;
}

/**
 * Integrals over a part of a spectrum by the trapezoidal rule, its ends on straight lines between their neighbours: pixels
 * of a spectrometer are not evenly apart, which rules finer formulas out. What lies outside of what was read counts as
 * nothing.
 */
export function sumsOver(spectrum: Spectrum, span: Span): Sums {
  const { wavelengths, values } = spectrum;
  const reach = reachOf(spectrum);
  const [from, to] = [Math.max(span.from, reach.from), Math.min(span.to, reach.to)];
  const sums: Sums = { area: 0, moment: 0 };
  if (!(to > from)) return sums;
  let [x, y] = [from, valueAt(spectrum, from)];
  const add = (nextX: number, nextY: number) => {
    const step = nextX - x;
    sums.area += (step * (y + nextY)) / 2;
    // Exact for a straight line between the two, which the product of two straight lines is not.
    sums.moment += (step * (y * (2 * x + nextX) + nextY * (x + 2 * nextX))) / 6;
    [x, y] = [nextX, nextY];
  };
  for (let i = firstNotBelow(wavelengths, from); i < wavelengths.length && (wavelengths[i] as number) < to; i++) {
    if ((wavelengths[i] as number) > from) add(wavelengths[i] as number, values[i] as number);
  }
  add(to, valueAt(spectrum, to));
  return sums;
}

/** Integral over a part, in the values' unit times nm: mW/cm² of a spectrum that is calibrated in power. */
export function areaOver(spectrum: Spectrum, span: Span): number {
  return sumsOver(spectrum, span).area;
}

/**
 * Centroid wavelength of a part, nm: the integral of wavelength times value over that of the value (IES RP-16, 4.7.2;
 * seen in a secondary source). NaN where there is no light.
 */
export function centroidOver(spectrum: Spectrum, span: Span): number {
  const { area, moment } = sumsOver(spectrum, span);
  return area > 0 ? moment / area : Number.NaN;
}

/** The width that each row stands for in the trapezoidal rule, nm. */
export function widthsOf(wavelengths: ArrayLike<number>): Float64Array {
  const last = wavelengths.length - 1;
  return Float64Array.from(wavelengths, (_, i) => {
    const [left, right] = [wavelengths[Math.max(0, i - 1)] as number, wavelengths[Math.min(last, i + 1)] as number];
    return (right - left) / 2;
  });
}

/** The highest value, and its place. */
export function highestOf(
  { values }: Pick<Spectrum, 'values'>,
  from = 0,
  to = values.length,
): [value: number, at: number] {
  let at = from;
  for (let i = from + 1; i < to; i++) if ((values[i] as number) > (values[at] as number)) at = i;
  return [values[at] as number, at];
}

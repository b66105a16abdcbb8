import { areaOver, reachOf, type Span, type Spectrum } from './spectrum.ts';

/** One wavelength of a sensor's relative spectral responsivity. */
export interface ResponsePoint {
  /** nm */
  wavelength: number;
  /** Relative to any value of its own. */
  response: number;
}

/**
 * Spectral mismatch correction factor of a broadband meter, by which its reading is multiplied: how much less of the light
 * it answers to than of that which it was calibrated with.
 *
 *   F = (sum S_c s / sum S_c) / (sum S_z s / sum S_z)
 *
 * S_c the spectrum of the calibration, S_z that of the light, s the meter's relative responsivity; the quantity itself is
 * irradiance, which weighs all wavelengths alike. ISO/CIE 19476:2014 (formula seen in secondary sources, there for
 * illuminance; for irradiance with V(lambda) put to one).
 *
 * @param reference light that the meter was calibrated with: a spectrum, or one wavelength, nm
 * @returns undefined where the responsivity does not reach over the light or is nought there
 */
export function mismatchFactor(
  light: Spectrum,
  response: readonly ResponsePoint[],
  reference: Spectrum | number,
): number | undefined {
  const seen = meanResponse(light, response);
  const calibrated =
    typeof reference === 'number' ? responseAt(response, reference) : meanResponse(reference, response);
  if (seen === undefined || calibrated === undefined || !(seen > 0) || !(calibrated > 0)) return undefined;
  return calibrated / seen;
}

/** Share of light that lies beyond what of a responsivity is stated, from 0 to 1. */
export function unstatedShare(light: Spectrum, response: readonly ResponsePoint[]): number {
  const nm = response.map((it) => it.wavelength);
  const all = areaOver(light, reachOf(light));
  if (!(all > 0)) return 0;
  return Math.max(0, 1 - areaOver(light, { from: Math.min(...nm), to: Math.max(...nm) }) / all);
}

/** Most of the light that may lie where the responsivity is not stated. Our own choice. */
const OUTSIDE = 0.01;

/** Mean of a responsivity, weighted with light; undefined where more than a hundredth of the light lies beyond what is stated. */
export function meanResponse(light: Spectrum, response: readonly ResponsePoint[]): number | undefined {
  const points = response.toSorted((a, b) => a.wavelength - b.wavelength);
  const [first, last] = [points[0], points.at(-1)];
  const all = areaOver(light, reachOf(light));
  if (!first || !last || points.length < 2 || !(all > 0)) return undefined;
  const known: Span = { from: first.wavelength, to: last.wavelength };
  const within = areaOver(light, known);
  if (Math.abs(all - within) > OUTSIDE * all) return undefined;
  const { wavelengths, values } = light;
  const weighted: Spectrum = {
    ...light,
    values: Float64Array.from(values, (it, i) => it * (between(points, wavelengths[i] as number) ?? 0)),
  };
  return areaOver(weighted, known) / within;
}

/** The responsivity at a wavelength, on straight lines between its points; undefined beyond them. */
export function responseAt(response: readonly ResponsePoint[], nm: number): number | undefined {
  return between(
    response.toSorted((a, b) => a.wavelength - b.wavelength),
    nm,
  );
}

function between(points: readonly ResponsePoint[], nm: number): number | undefined {
  const after = points.findIndex((it) => it.wavelength >= nm);
  const right = points[after];
  if (!right) return undefined;
  if (right.wavelength === nm) return right.response;
  const left = points[after - 1];
  if (!left) return undefined;
  const share = (nm - left.wavelength) / (right.wavelength - left.wavelength);
  return left.response + share * (right.response - left.response);
}

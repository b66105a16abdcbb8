import { type EvenRows, slidingFit, wavelengthOf } from './even-rows.ts';
import { summitsOf } from './prominence.ts';
import { areaOver, type Span, type Spectrum } from './spectrum.ts';

/** Width over which the bend of the curve is fitted, nm: about half an LED's own. Our own choice. */
const BEND_WIDTH = 9;
/** A bend stands out by this share of the strongest bend within the peak. Our own choice. */
const SMALLEST_BEND = 0.25;
/** And by so many standard deviations of what noise makes of it. Our own choice. */
const BEND_OVER_NOISE = 8;
/** Neighbours pull the place of a bend outwards by up to about a tenth of how far they are apart; tried on pairs of equal width. */
const PULL = 0.1;

/** One of several LEDs' light that make up a single peak. */
export interface Part {
  /** nm */
  wavelength: number;
  /** Standard uncertainty, nm. */
  wavelengthError: number;
  /** Share of all light of the spectrum on its side of the bends between, 0 to 1. */
  share: number;
}

/**
 * What a peak is made up of. Light of two kinds of LEDs whose wavelengths lie nearer than their widths has a single top,
 * but the curve bends down twice: each downward bend (a minimum of the second derivative) is taken for one kind. A peak
 * that bends once has no parts.
 */
export function partsOf(
  spectrum: Spectrum,
  rows: EvenRows,
  { lit, noise, total }: { lit: Span; noise: number; total: number },
): Part[] {
  if (BEND_WIDTH / rows.step < 3 || !(total > 0)) return [];
  const bend = slidingFit(rows, BEND_WIDTH, 2).map((it) => -it);
  const [first, last] = [lit.from, lit.to].map((nm) => Math.round((nm - rows.from) / rows.step)) as [number, number];
  const within = bend.slice(first, last + 1);
  const strongest = within.reduce((most, it) => Math.max(most, it), 0);
  // Scatter of the second derivative over n even points, for n not small: sigma / h^2 * sqrt(720 / n^5).
  const points = BEND_WIDTH / rows.step;
  const ofNoise = (noise / rows.step ** 2) * Math.sqrt(720 / points ** 5);
  const summits = summitsOf(within, Math.max(SMALLEST_BEND * strongest, BEND_OVER_NOISE * ofNoise)).filter(
    (it) => (within[it.at] as number) > 0,
  );
  if (summits.length < 2) return [];
  const places = summits.map((it) => wavelengthOf(rows, first + it.at));
  const between = summits.slice(1).map((it, i) => {
    let lowest = summits[i]?.at ?? 0;
    for (let k = lowest; k <= it.at; k++) if ((within[k] as number) < (within[lowest] as number)) lowest = k;
    return wavelengthOf(rows, first + lowest);
  });
  return places.map((wavelength, i) => {
    const nearest = Math.min(...places.filter((it) => it !== wavelength).map((it) => Math.abs(it - wavelength)));
    const own: Span = { from: between[i - 1] ?? lit.from, to: between[i] ?? lit.to };
    return {
      wavelength,
      wavelengthError: Math.max(rows.step, PULL * nearest),
      share: areaOver(spectrum, own) / total,
    };
  });
}

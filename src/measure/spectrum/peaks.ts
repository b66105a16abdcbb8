import type { Dark } from './dark.ts';
import { type EvenRows, evenRows, pointsOf, slidingFit, wavelengthOf } from './even-rows.ts';
import { type HalfWidth, halfWidthAt, widthFromOneSide } from './half-width.ts';
import { type Part, partsOf } from './parts.ts';
import { type Summit, summitsOf } from './prominence.ts';
import { areaOver, centroidOver, reachOf, type Span, type Spectrum } from './spectrum.ts';

/** A peak stands out by at least this share of the highest value. Our own choice. */
export const SMALLEST_PROMINENCE = 0.02;
/** And by so many standard deviations of the noise. Our own choice. */
export const PROMINENCE_OVER_NOISE = 6;
/** Width over which noise is smoothed before peaks are looked for, nm: that of a usual array spectrometer's slit. */
const SMOOTHED = 2;
/** Share of the width at half maximum over which the top is fitted; the same narrower, to see whether its shape matters. */
const [TOP, NARROW_TOP] = [0.5, 0.3];
/** Rows too far apart for the top's shape move it by about this much of a step, times their share of the width squared; tried. */
const SAMPLING = 0.1;
/** A peak's light reaches to where its value has fallen to this share of its height. Our own choice. */
export const FOOT = 0.01;

/** One peak of a spectrum. Wavelengths and widths in nm, with standard uncertainties from noise and shape alone. */
export interface Peak {
  /** Where the fitted top is level. */
  wavelength: number;
  wavelengthError: number;
  /** Height above the dark level, in the spectrum's unit. */
  height: number;
  /** How far it stands above the higher of the saddles beside it, as share of its height. */
  prominence: number;
  /** Width at half its height; undefined where a higher neighbour begins before, or the spectrum ends. */
  width: HalfWidth | undefined;
  /** Of its light down to 1 % of its height, nm. */
  centroid: number;
  /** Where that light lies. */
  lit: Span;
  /** From the saddle before it to the one after it. */
  span: Span;
  /** Share of all light of the spectrum that lies there, 0 to 1. */
  share: number;
  /** How much of its share the neighbours may have, or it of theirs: what the saddles hold. */
  shareError: number;
  /** Where two or more LEDs of other wavelengths make it up: what can be told apart by the bend; else empty. */
  parts: readonly Part[];
}

/**
 * Peaks of a spectrum above its dark level, shortest wavelength first. A peak stands out by 2 % of the highest value and by
 * six times the noise. Its wavelength is where the slope of a polynomial fitted to its top is nought, which noise moves
 * less than the highest row.
 */
export function peaksOf(spectrum: Spectrum, dark: Dark): Peak[] {
  const rows = evenRows(spectrum);
  const smooth: EvenRows = { ...rows, values: slidingFit(rows, SMOOTHED) };
  const highest = smooth.values.reduce((most, it) => Math.max(most, it), 0);
  if (!(highest > 0)) return [];
  const smallest = Math.max(SMALLEST_PROMINENCE * highest, PROMINENCE_OVER_NOISE * dark.noise);
  const summits = summitsOf(smooth.values, smallest).filter((it) => (smooth.values[it.at] as number) > 0);
  const total = areaOver(spectrum, reachOf(spectrum));
  return summits.map((summit, i) => {
    const span: Span = {
      from: i === 0 ? rows.from : wavelengthOf(rows, saddle(smooth, summits[i - 1] as Summit, summit)),
      to:
        i + 1 === summits.length
          ? reachOf(spectrum).to
          : wavelengthOf(rows, saddle(smooth, summit, summits[i + 1] as Summit)),
    };
    return peakOf({ spectrum, rows, smooth, dark, total }, summit, span);
  });
}

interface Ground {
  spectrum: Spectrum;
  rows: EvenRows;
  smooth: EvenRows;
  dark: Dark;
  total: number;
}

function peakOf(ground: Ground, summit: Summit, span: Span): Peak {
  const { spectrum, rows, smooth, dark, total } = ground;
  const height = smooth.values[summit.at] as number;
  const between = [span.from, span.to].map((nm) => Math.round((nm - rows.from) / rows.step)) as [number, number];
  const width = halfWidthAt(smooth, summit.at, height, dark.noise, between);
  const usual = width?.value ?? widthFromOneSide(smooth, summit.at, height, between) ?? SMOOTHED;
  const top = topOf(rows, summit.at, usual, dark.noise);
  const lit = litAround(smooth, summit.at, Math.max(FOOT * height, 3 * dark.noise), span);
  const area = areaOver(spectrum, span);
  const edges = [span.from, span.to].map((nm) => Math.max(0, valueNear(smooth, nm)));
  // Light of a neighbour under the peak, or of the peak under a neighbour: as wide as the peak, as high as the saddle.
  const [left = 0, right = 0] = edges;
  const mixed = ((left + right) / 2) * usual;
  return {
    wavelength: top.wavelength,
    wavelengthError: top.error,
    height,
    prominence: Math.min(1, summit.prominence / height),
    width,
    centroid: centroidOver(spectrum, lit),
    lit,
    span,
    share: total > 0 ? area / total : 0,
    shareError: total > 0 ? mixed / total / Math.sqrt(3) : 0,
    parts: partsOf(spectrum, rows, { lit, noise: dark.noise, total }),
  };
}

function valueNear(rows: EvenRows, nm: number): number {
  const last = rows.values.length - 1;
  const place = Math.min(last, Math.max(0, Math.round((nm - rows.from) / rows.step)));
  // The very ends of a spectrum are no saddle.
  return place === 0 || place === last ? 0 : (rows.values[place] as number);
}

/** Place of the lowest value between two summits. */
function saddle({ values }: EvenRows, one: Summit, other: Summit): number {
  let lowest = one.at;
  for (let i = one.at; i <= other.at; i++) if ((values[i] as number) < (values[lowest] as number)) lowest = i;
  return lowest;
}

/** Wavelength at which the fitted slope is nought, nearest to a summit. */
function topOf(rows: EvenRows, at: number, width: number, noise: number): { wavelength: number; error: number } {
  const wide = levelPlace(rows, at, TOP * width);
  const narrow = levelPlace(rows, at, NARROW_TOP * width);
  const points = pointsOf(rows, TOP * width);
  // Scatter of the slope of a polynomial of third degree over n even points, for n not small: sigma / h * sqrt(75 / n^3).
  const slopeError = (noise / rows.step) * Math.sqrt(75 / points ** 3);
  const bend = Math.abs(slidingFit(rows, TOP * width, 2)[at] as number);
  const ofNoise = bend > 0 ? slopeError / bend : rows.step;
  const ofShape = Math.abs(wide - narrow) * rows.step;
  const ofSteps = (SAMPLING * rows.step ** 3) / width ** 2;
  return {
    wavelength: wavelengthOf(rows, wide),
    error: Math.hypot(Math.min(ofNoise, width), ofShape / Math.sqrt(3), ofSteps),
  };
}

/** Place, between rows, at which the slope goes from up to down, nearest to a summit. */
function levelPlace(rows: EvenRows, at: number, width: number): number {
  const slope = slidingFit(rows, width, 1);
  const reach = Math.ceil(pointsOf(rows, width) / 2) + 2;
  let found: number | undefined;
  for (let i = Math.max(0, at - reach); i < Math.min(slope.length - 1, at + reach); i++) {
    const [here, next] = [slope[i] as number, slope[i + 1] as number];
    if (!(here >= 0 && next < 0)) continue;
    const place = i + here / (here - next);
    if (found === undefined || Math.abs(place - at) < Math.abs(found - at)) found = place;
  }
  return found ?? at;
}

function litAround({ from, step, values }: EvenRows, at: number, floor: number, span: Span): Span {
  const [first, last] = [Math.round((span.from - from) / step), Math.round((span.to - from) / step)];
  let [left, right] = [at, at];
  while (left > Math.max(0, first) && (values[left - 1] as number) > floor) left--;
  while (right < Math.min(values.length - 1, last) && (values[right + 1] as number) > floor) right++;
  return { from: from + left * step, to: from + right * step };
}

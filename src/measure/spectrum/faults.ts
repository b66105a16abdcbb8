import { type Dark, stepOf } from './dark.ts';
import { evenRows } from './even-rows.ts';
import { halfWidthAt } from './half-width.ts';
import { highestOf, type Spectrum } from './spectrum.ts';

/** An end of a spectrum that still has this share of its highest value cuts off light. Our own choice. */
export const CUT_SHARE = 0.01;
/** And so many standard deviations of the noise. Our own choice. */
const CUT_OVER_NOISE = 5;
/** Rows at an end that are looked at together. */
const END_ROWS = 5;
/** A flat top has at least so many equal rows. Our own choice. */
const FLAT_ROWS = 4;
/** The top would have to fall by so many steps of the file, or of the noise, over that length if it were none. Our own choice. */
const FLAT_FALL = 4;
/** A value below nought by more than this share of the highest, and than six times the noise, is no noise. Our own choice. */
const DEEPEST = 0.02;

/** What is wrong with a spectrum as it was taken. */
export interface SpectrumFaults {
  /** Ends at which it breaks off within light, and how much is there: share of the highest value. */
  cut: ReadonlyArray<{ end: 'short' | 'long'; at: number; share: number }>;
  /** The top is flat: the sensor was full. Wavelengths between which it is, nm. */
  flat: { from: number; to: number } | undefined;
  /** Lowest value as share of the highest, where it is too far below nought for noise. */
  negative: number | undefined;
}

/** Looks for what makes a spectrum's figures wrong: light beyond its ends, a full sensor, values below darkness. */
export function faultsOf(spectrum: Spectrum, dark: Dark): SpectrumFaults {
  const { wavelengths, values } = spectrum;
  const [highest, at] = highestOf(spectrum);
  const last = values.length - 1;
  const mean = (from: number) => {
    const rows = Math.min(END_ROWS, values.length);
    let sum = 0;
    for (let i = 0; i < rows; i++) sum += values[from === 0 ? i : last - i] as number;
    return sum / rows;
  };
  const least = Math.max(CUT_SHARE * highest, (CUT_OVER_NOISE * dark.noise) / Math.sqrt(END_ROWS));
  const cut = (['short', 'long'] as const).flatMap((end) => {
    const value = mean(end === 'short' ? 0 : last);
    const nm = wavelengths[end === 'short' ? 0 : last] as number;
    return value > least ? [{ end, at: nm, share: value / highest }] : [];
  });
  let lowest = highest;
  for (let i = 0; i <= last; i++) lowest = Math.min(lowest, values[i] as number);
  const isNegative = lowest < 0 && -lowest > Math.max(DEEPEST * highest, 6 * dark.noise);
  return { cut, flat: flatTop(spectrum, highest, at, dark), negative: isNegative ? lowest / highest : undefined };
}

/**
 * A run of equal highest values that is longer than rounding makes of a rounded top. A top of Gaussian shape and the width
 * that was read falls over half the run by 4 ln 2 (half run / width)^2 of its height; the file's own step, and its noise,
 * hide less than that.
 */
function flatTop(spectrum: Spectrum, highest: number, at: number, { noise }: Dark): SpectrumFaults['flat'] {
  const { wavelengths, values } = spectrum;
  let end = at;
  while (end + 1 < values.length && values[end + 1] === highest) end++;
  if (end - at + 1 < FLAT_ROWS) return undefined;
  const span = { from: wavelengths[at] as number, to: wavelengths[end] as number };
  const rows = evenRows(spectrum);
  const width = halfWidthAt(rows, Math.round(((span.from + span.to) / 2 - rows.from) / rows.step), highest, 0);
  const length = span.to - span.from;
  const fall = width ? 4 * Math.LN2 * (length / 2 / width.value) ** 2 * highest : highest;
  return fall > FLAT_FALL * Math.max(stepOf(values, highest), noise) ? span : undefined;
}

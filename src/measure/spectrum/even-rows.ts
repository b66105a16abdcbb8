import { sgg } from 'ml-savitzky-golay-generalized';
import { median } from 'simple-statistics';
import type { Spectrum } from './spectrum.ts';
import { reachOf } from './spectrum.ts';

/** More rows than this say no more of light whose narrowest line is a good part of a nanometre wide. */
const MOST_ROWS = 16_000;
/** Fewest points that a polynomial of third degree is fitted to. */
const SHORTEST_WINDOW = 5;
/** Most of them: a wider window costs time that grows with its square, and shows nothing more. */
const LONGEST_WINDOW = 101;
/** Degree of the fitted polynomials: the lowest that follows a peak whose sides differ. */
const DEGREE = 3;

/** A spectrum on even steps, as sliding polynomials want it. */
export interface EvenRows {
  from: number;
  /** nm */
  step: number;
  values: Float64Array;
}

/** The same spectrum on even steps, those of the middle of its own; values between rows lie on straight lines. */
export function evenRows(spectrum: Spectrum): EvenRows {
  const { wavelengths, values } = spectrum;
  const { from, to } = reachOf(spectrum);
  const steps = Array.from({ length: wavelengths.length - 1 }, (_, i) => at(wavelengths, i + 1) - at(wavelengths, i));
  const step = Math.max(median(steps), (to - from) / MOST_ROWS);
  const count = Math.floor((to - from) / step + 1e-6) + 1;
  const even = new Float64Array(count);
  let row = 0;
  for (let i = 0; i < count; i++) {
    const nm = Math.min(to, from + i * step);
    while (row + 2 < wavelengths.length && at(wavelengths, row + 1) < nm) row++;
    const [left, right] = [at(wavelengths, row), at(wavelengths, row + 1)];
    const share = Math.min(1, Math.max(0, (nm - left) / (right - left)));
    even[i] = at(values, row) * (1 - share) + at(values, row + 1) * share;
  }
  return { from, step, values: even };
}

/** Wavelength of a place among even rows, which may lie between two. */
export function wavelengthOf({ from, step }: EvenRows, place: number): number {
  return from + place * step;
}

/**
 * A polynomial of third degree fitted around each row (Savitzky and Golay 1964): its value, or a derivative by wavelength.
 *
 * @param width over which it is fitted, nm; five rows at least
 */
export function slidingFit(rows: EvenRows, width: number, derivative: 0 | 1 | 2 = 0): Float64Array {
  const points = pointsOf(rows, width);
  // Rows so far apart that five of them are much wider than what is asked for are better left as they are.
  if (derivative === 0 && (points - 1) * rows.step > 1.5 * width) return rows.values;
  if (points > rows.values.length) return derivative === 0 ? rows.values : new Float64Array(rows.values.length);
  return sgg(rows.values, rows.step, { windowSize: points, derivative, polynomial: DEGREE });
}

/** How many rows a width takes: an odd number, five at least and a hundred or so at most. */
export function pointsOf({ step, values }: EvenRows, width: number): number {
  const wanted = 2 * Math.round(width / step / 2) + 1;
  const most = values.length - 1 + (values.length % 2);
  return Math.max(SHORTEST_WINDOW, Math.min(wanted, most, LONGEST_WINDOW));
}

const at = (row: ArrayLike<number>, i: number) => row[i] as number;

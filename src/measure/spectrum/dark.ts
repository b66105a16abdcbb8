import { median } from 'simple-statistics';
import { firstNotBelow, highestOf, type Spectrum } from './spectrum.ts';

/** Parts at least this long without light tell the dark level, nm. Our own choice. */
export const SHORTEST_DARK = 20;
/** What lies so near to light is left out of them, as the tails of LEDs reach there, nm. Our own choice. */
const TAIL = 30;
/** Values up to this share of the highest can be darkness. Our own choice: the tails of LEDs fall below it. */
const DARK_SHARE = 0.02;
/** An offset of more than so many standard errors is subtracted. Our own choice. */
export const CLEAR_OFFSET = 3;
/** Halves of a slope differ by 2.7 times their own scatter, those of noise by a fraction of it. */
const SLOPE = 1.5;
/** Scales the median of absolute deviations to the standard deviation of normal noise: 1 / 0.67449. */
const MAD_TO_SIGMA = 1.4826;
/** Scatter of a second difference over that of a value: the root of 1 + 4 + 1. */
const SECOND_DIFFERENCE = Math.sqrt(6);

/** What a spectrum shows where no light is. */
export interface Dark {
  /** Level there that was subtracted, in the spectrum's unit; 0 where it is not clear of nought, or not known. */
  offset: number;
  /** Standard uncertainty of what is left of it: of its mean, and of how far the dark parts differ. */
  offsetError: number;
  /** Standard deviation of a single row. */
  noise: number;
  /** Whether any part is dark, so that the level is known. */
  isKnown: boolean;
}

/** A run of rows in the dark. */
interface Run {
  level: number;
  scatter: number;
  rows: number;
  /** Its two halves have one level: the foot of a slope is no darkness. */
  isFlat: boolean;
}

/**
 * Finds the dark level of a spectrum and its noise. Dark are runs of 20 nm or more with no value over 2 % of the highest,
 * less what is within 30 nm of light. Noise is the scatter there or that of second differences, which light that
 * changes smoothly leaves alone, whichever is larger, since neighbouring rows of a smoothed spectrum differ little; and at
 * least what rounding makes of it. Where two
 * dark parts differ, the level between them is not known better than that.
 */
export function darkOf(spectrum: Spectrum): Dark {
  const runs = darkRuns(spectrum);
  const rounding = stepOf(spectrum.values, highestOf(spectrum)[0]) / Math.sqrt(12);
  const noise = Math.max(rounding, noiseOf(spectrum.values), ...runs.map((it) => it.scatter));
  if (runs.length === 0) return { offset: 0, offsetError: 0, noise, isKnown: false };
  const rows = runs.reduce((sum, it) => sum + it.rows, 0);
  const level = runs.reduce((sum, it) => sum + it.level * it.rows, 0) / rows;
  const levels = runs.map((it) => it.level);
  const apart = (Math.max(...levels) - Math.min(...levels)) / 2 / Math.sqrt(3);
  const offsetError = Math.hypot(noise / Math.sqrt(rows), apart);
  const isClear = Math.abs(level) > CLEAR_OFFSET * offsetError;
  return {
    offset: isClear ? level : 0,
    // A level that may be nought and is left there can be off by all of it.
    offsetError: isClear ? offsetError : Math.hypot(offsetError, level),
    noise,
    isKnown: true,
  };
}

function darkRuns(spectrum: Spectrum): Run[] {
  const { wavelengths, values } = spectrum;
  const [highest] = highestOf(spectrum);
  let lowest = highest;
  for (let i = 0; i < values.length; i++) lowest = Math.min(lowest, values[i] as number);
  const ceiling = lowest + DARK_SHARE * (highest - lowest);
  const runs: Run[] = [];
  let start = 0;
  for (let i = 0; i <= values.length; i++) {
    if (i < values.length && (values[i] as number) <= ceiling) continue;
    if (i > start) {
      const [first, last] = [wavelengths[start] as number, wavelengths[i - 1] as number];
      const from = start === 0 ? first : first + TAIL;
      const to = i === values.length ? last : last - TAIL;
      if (to - from >= SHORTEST_DARK) {
        runs.push(runOf(values, firstNotBelow(wavelengths, from), firstNotBelow(wavelengths, to)));
      }
    }
    start = i + 1;
  }
  return runs.filter((it) => it.rows >= 3 && it.isFlat);
}

function runOf(values: ArrayLike<number>, from: number, to: number): Run {
  const all = Array.from({ length: Math.max(1, to - from) }, (_, i) => values[from + i] as number);
  const [whole, first, second] = [all, all.slice(0, all.length >> 1), all.slice(all.length >> 1)].map(levelOf) as [
    Level,
    Level,
    Level,
  ];
  const isFlat = Math.abs(first.level - second.level) <= SLOPE * Math.max(first.scatter, second.scatter);
  return { ...whole, rows: all.length, isFlat };
}

type Level = Pick<Run, 'level' | 'scatter'>;

function levelOf(all: readonly number[]): Level {
  if (all.length === 0) return { level: 0, scatter: 0 };
  const level = median([...all]);
  return { level, scatter: MAD_TO_SIGMA * median(all.map((it) => Math.abs(it - level))) };
}

/** Standard deviation of the noise of a row, from second differences. */
function noiseOf(values: ArrayLike<number>): number {
  if (values.length < 5) return 0;
  const differences: number[] = [];
  for (let i = 1; i + 1 < values.length; i++) {
    differences.push(Math.abs((values[i - 1] as number) - 2 * (values[i] as number) + (values[i + 1] as number)));
  }
  return (MAD_TO_SIGMA * median(differences)) / SECOND_DIFFERENCE;
}

/**
 * The step in which values near the top are written: the smallest difference, where all others are multiples of it; 0
 * where they are not. Numbers with an exponent have larger steps there than below.
 */
export function stepOf(values: ArrayLike<number>, highest: number): number {
  const sorted = Float64Array.from(values)
    .filter((it) => it > highest / 2)
    .toSorted();
  const differences = sorted.slice(1).map((it, i) => it - (sorted[i] as number));
  // What floating point leaves of equal values is no step.
  const steps = differences.filter((it) => it > 1e-9 * highest);
  const step = steps.reduce((least, it) => Math.min(least, it), Number.POSITIVE_INFINITY);
  const isMultiple = (it: number) => Math.abs(it / step - Math.round(it / step)) < 0.01;
  return steps.length > 0 && steps.every(isMultiple) ? step : 0;
}

/** The same spectrum above its dark level. */
export function aboveDark(spectrum: Spectrum, { offset }: Dark): Spectrum {
  if (offset === 0) return spectrum;
  return { ...spectrum, values: Float64Array.from(spectrum.values, (it) => it - offset) };
}

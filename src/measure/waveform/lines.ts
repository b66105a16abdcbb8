import { at } from '../log/series.ts';
import { MOST_SAMPLES, type Periodogram, periodogram } from './periodogram.ts';

/** A frequency that stands out of a record's noise. */
export interface Line {
  /** Hz */
  frequency: number;
  /** Of the sine at that frequency, in the record's unit. */
  amplitude: number;
}

/** What a record's spectrum holds. */
export interface Lines {
  /** The strongest first; those under a fiftieth of it are left out. */
  lines: readonly Line[];
  /** Largest amplitude that is no line: noise, which a fainter line would hide in. */
  hidden: number;
  /** Scatter of single samples, one standard deviation: by the middle of all frequencies, as if it were alike at all of them. */
  noise: number;
  /** Largest amplitude at frequencies of which the record holds fewer than three periods. */
  slow: number;
}

/**
 * Times the mean power of the noise around it by which a line stands out. Our own choice: power of noise alone exceeds it in one of
 * 5 · 10⁸ frequencies (it is distributed exponentially), so that a record of a million samples shows a false line once in a thousand.
 */
const STANDS_OUT = 20;
/** Lines that matter beside the strongest, share of its amplitude. Our own choice. */
const FAINTEST = 0.02;
/** Periods that a record has to hold of what it claims. Our own choice. */
export const FEWEST_PERIODS = 3;
/** Lines that are kept, at most. */
const MOST_LINES = 12;

/** Frequencies that stand out of the noise of an evenly sampled record, up to half its rate. */
export function linesOf(record: Float64Array, rate: number): Lines {
  const spectrum = periodogram(record, rate);
  const { power, spacing, lobe } = spectrum;
  const first = Math.ceil((FEWEST_PERIODS * rate) / record.length / spacing);
  const floor = noiseFloor(spectrum);
  const found: Line[] = [];
  let hidden = 0;
  let slow = 0;
  for (let k = 1; k < Math.max(1, first); k++) slow = Math.max(slow, at(power, k));
  for (let k = Math.max(1, first); k < power.length - 1; k++) {
    const value = at(power, k);
    if (value > STANDS_OUT * floor(k)) {
      if (isPeak(power, k, lobe)) found.push(refined(spectrum, k));
    } else if (value > hidden) {
      hidden = value;
    }
  }
  const middle = at(power.slice().sort(), power.length >> 1) / Math.LN2;
  // Noise of variance s² has a mean power of 4 s² Σw² / (Σw)², which is 6 s² / n under this window.
  const noise = Math.sqrt((middle * Math.min(record.length, MOST_SAMPLES)) / 6);
  found.sort((a, b) => b.amplitude - a.amplitude);
  const faintest = FAINTEST * (found[0]?.amplitude ?? 0);
  return {
    lines: found.filter((it) => it.amplitude >= faintest).slice(0, MOST_LINES),
    hidden: Math.sqrt(hidden),
    noise,
    slow: Math.sqrt(slow),
  };
}

function isPeak(power: Float64Array, k: number, lobe: number): boolean {
  const value = at(power, k);
  for (let i = Math.max(0, Math.floor(k - lobe)); i <= Math.min(power.length - 1, k + lobe); i++) {
    if (at(power, i) > value || (at(power, i) === value && i < k)) return false;
  }
  return true;
}

/** Top of the parabola through the logarithms of a peak and its neighbours; good to a few thousandths of a spacing. */
function refined({ power, spacing }: Periodogram, k: number): Line {
  const [a, b, c] = [k - 1, k, k + 1].map((i) => Math.log(Math.max(at(power, i), Number.MIN_VALUE))) as [
    number,
    number,
    number,
  ];
  const shift = a - 2 * b + c === 0 ? 0 : (0.5 * (a - c)) / (a - 2 * b + c);
  return { frequency: (k + shift) * spacing, amplitude: Math.exp((b - 0.25 * (a - c) * shift) / 2) };
}

/** Frequencies at which the floor is worked out, in a row; in between it is that of the nearest. */
const FLOORS_AN_OCTAVE = 4;
/** Neighbours that it is the median of, at least. */
const FEWEST_NEIGHBOURS = 32;

/**
 * Mean power of the noise around a frequency: by the median of an octave either side, which lines do not reach unless they fill it;
 * noise that rises towards low frequencies is followed.
 */
function noiseFloor({ power }: Periodogram): (k: number) => number {
  const floors: number[] = [];
  const placeOf = (k: number) => Math.round(FLOORS_AN_OCTAVE * Math.log2(k));
  for (let place = 0; place <= placeOf(power.length); place++) {
    const k = 2 ** (place / FLOORS_AN_OCTAVE);
    const from = Math.max(1, Math.floor(Math.min(k / 2, power.length - FEWEST_NEIGHBOURS)));
    const to = Math.min(power.length, Math.max(2 * k, from + FEWEST_NEIGHBOURS));
    const around = power.slice(from, to).sort();
    // Of an exponential distribution the median is ln 2 of the mean.
    floors.push(at(around, around.length >> 1) / Math.LN2);
  }
  return (k) => at(floors, placeOf(k));
}

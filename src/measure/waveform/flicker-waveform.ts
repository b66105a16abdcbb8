import { at, type TimeSeries } from '../log/series.ts';
import { FEWEST_EACH, fold, PARTS, phasor, tuned } from './fold.ts';
import { type Line, linesOf } from './lines.ts';
import { type CorrectedModulation, correctedModulation, modulationOf } from './modulation.ts';

/** How a record was taken, so far as the tester says it. */
export interface WaveformSetup {
  /** What the sensor shows in darkness, in the record's unit. */
  dark?: number;
  /** Highest frequency that sensor and amplifier let through, Hz. */
  bandwidth?: number;
}

/** Why a record says nothing of flicker. */
export type NoWaveform =
  /** It goes below darkness: the steady part was cut off, or darkness is not where it is taken to be. */
  | 'below-darkness'
  /** No light in it. */
  | 'no-light'
  /** Too few samples. */
  | 'too-few'
  /** What it does most it does more slowly than in a third of the record. */
  | 'too-short'
  /** Steps in time that differ: neither a spectrum nor a period can be made of them. */
  | 'uneven-steps';

/** How the extremes were found. */
export type WaveformKind =
  /** A period is there, and the record is laid over itself. */
  | 'periodic'
  /** Several frequencies, or one that wanders: extremes of the record as it is. */
  | 'irregular'
  /** Nothing stands out of the noise; the depth is a bound. */
  | 'steady'
  /** Every sample is the same. */
  | 'constant';

export interface FlickerWaveform extends CorrectedModulation {
  kind: WaveformKind;
  /** The depth is at most so much, or at least. */
  bound?: 'below' | 'above';
  /** Hz, with its standard uncertainty; undefined where nothing stands out. */
  frequency?: { value: number; uncertainty: number };
  /** What the frequency may be a mirror image of something faster: the sensor lets more through than the samples can tell apart. */
  mayBeAlias: boolean;
  /** Frequencies that stand out, the strongest first; amplitudes in % of the mean. */
  lines: readonly Line[];
  samples: number;
  /** Samples a second. */
  rate: number;
  /** s */
  duration: number;
  /** One period, the mean being 1; or the record's beginning where there is none. */
  profile: readonly number[];
}

/** Fewest samples that are looked at. */
export const FEWEST_SAMPLES = 64;
/** Share by which a step may differ from the others; and share of steps that may. Our own choices. */
const UNEVEN_STEP = 0.1;
const UNEVEN_SHARE = 0.01;
/** How far below darkness a wave may go, share of its height: the sensor's own zero. Our own choice. */
const BELOW_DARKNESS = 0.05;
/** Share of the strongest line that others may have without being a multiple of it. Our own choice. */
const OTHER_LINES = 0.1;
/** Divisors of the strongest frequency that its period may rest on. */
const DIVISORS = [2, 3, 4, 5, 6] as const;
/** Share of a line's amplitude that is lost where its frequency wanders. Our own choice. */
const WANDERING = 0.05;
/** Share of a depth that may be taken off for noise before a period is divided more coarsely. Our own choice. */
const NOISE_SHARE = 0.02;
/** Parts of a period that samples have to reach, or its extremes lie between them. */
const FEWEST_PARTS = 10;
/** Parts of a record whose means have to be alike where it is called steady. */
const SLOW_PARTS = 64;
/** How deep a slow change may be that goes into the bound of a steady light, %. Our own choice. */
const MOST_SLOW = 1;
/** Points of a drawing. */
const DRAWN = 200;

/**
 * Modulation depth, flicker index and main frequency of a record of light. Where it has a period, all periods are laid over one
 * another first, which takes noise away and fills in between samples; what noise is left is corrected for.
 *
 * Frequencies are told up to half the rate. A faster one shows as a slower one, and no record says by itself that it does.
 */
export function flickerWaveform(
  series: TimeSeries,
  { dark = 0, bandwidth }: WaveformSetup = {},
): FlickerWaveform | NoWaveform {
  const { times } = series;
  const count = times.length;
  if (count < FEWEST_SAMPLES) return 'too-few';
  const duration = at(times, count - 1) - at(times, 0);
  const rate = (count - 1) / duration;
  if (!isEven(times, 1 / rate)) return 'uneven-steps';
  // A record of millions of samples is not there twice without need.
  const values = dark === 0 ? series.values : series.values.map((it) => it - dark);
  const light: TimeSeries = { times, values };
  const [low, high, mean] = extremes(values);
  const facts = { samples: count, rate, duration, mayBeAlias: bandwidth !== undefined && bandwidth > rate / 2 };
  if (low === high && high > 0) return { ...facts, ...CONSTANT };
  const { lines, hidden, noise, slow } = linesOf(values, rate);
  const main = lines[0];
  if (!(mean > (main ? 0 : 3 * noise))) return low < -6 * noise ? 'below-darkness' : 'no-light';
  const share = (all: readonly Line[]) =>
    all.map(({ frequency, amplitude }) => ({ frequency, amplitude: (100 * amplitude) / mean }));
  if (!main) {
    const depth = (100 * hidden) / mean + modulationOf(runningMean(values, Math.ceil(count / SLOW_PARTS))).depth;
    if (depth > MOST_SLOW && slow > hidden) return 'too-short';
    const flat = { depth, index: depth / 100 / Math.PI, depthUncertainty: 0, indexUncertainty: 0, noiseTakenOff: 0 };
    return { ...facts, ...flat, kind: 'steady', bound: 'below', lines: [], profile: scaled(beginning(values), mean) };
  }
  if (slow > main.amplitude) return 'too-short';
  const period = periodOf(light, lines, noise);
  const frequency =
    period === undefined
      ? { value: main.frequency, uncertainty: 1 / duration }
      : { value: tuned(light, main.frequency), uncertainty: frequencyScatter(noise, main, facts) };
  const made = period === undefined ? irregular(values, main, rate, noise) : periodic(light, period);
  const lowest = Math.min(...made.light);
  if (lowest < -BELOW_DARKNESS * (Math.max(...made.light) - lowest)) return 'below-darkness';
  return {
    ...facts,
    ...made.modulation,
    kind: made.kind,
    frequency,
    lines: share(lines),
    profile: scaled(made.light, mean),
    ...(made.bound && { bound: made.bound }),
  };
}

const CONSTANT = {
  kind: 'constant' as const,
  ...{ depth: 0, index: 0, depthUncertainty: 0, indexUncertainty: 0, noiseTakenOff: 0 },
  lines: [],
  profile: [1, 1],
};

interface Made {
  kind: WaveformKind;
  modulation: CorrectedModulation;
  light: readonly number[];
  bound?: 'above';
}

/**
 * The more parts a period has, the closer to its tips, and the fewer samples in each to take noise away: as many as leave less than a
 * fiftieth of the depth to be taken off for noise, or the fewest.
 *
 * The tip of a wave lies within a part, whose mean is less. What is lost falls with the length of the parts, at worst in
 * proportion: as much as from parts of twice the length to these. Where noise does not hide it, that is added; it stays in the uncertainty.
 */
function periodic(light: TimeSeries, frequency: number): Made {
  const count = light.values.length;
  const read = (parts: number) => {
    const folded = fold(light, frequency, parts);
    return { ...folded, modulation: correctedModulation(folded.profile, folded.scatter, count) };
  };
  const usable = PARTS.filter((it) => it * FEWEST_EACH <= count || it === PARTS[PARTS.length - 1]);
  let fine = read(usable[0] as number);
  for (const parts of usable.slice(1)) {
    if (fine.modulation.noiseTakenOff <= NOISE_SHARE * fine.modulation.depth) break;
    fine = read(parts);
  }
  const made = { kind: 'periodic' as const, light: fine.profile };
  // Samples that hit the same few places of each period say nothing of what lies between.
  if (fine.profile.length < FEWEST_PARTS) return { ...made, modulation: fine.modulation, bound: 'above' };
  const coarse = read(Math.ceil(fine.profile.length / 2)).modulation;
  const { depth, depthUncertainty } = fine.modulation;
  const difference = depth - coarse.depth;
  const isLost = difference > 2 * Math.hypot(depthUncertainty, coarse.depthUncertainty);
  const modulation = {
    ...fine.modulation,
    depth: Math.min(100, depth + (isLost ? difference : 0)),
    depthUncertainty: Math.hypot(depthUncertainty, Math.max(0, difference) / Math.sqrt(3)),
    // Edges lie within a part, and their place in it is not known.
    indexUncertainty: Math.hypot(fine.modulation.indexUncertainty, depth / 100 / fine.profile.length / Math.sqrt(3)),
  };
  return { ...made, modulation };
}

/**
 * Of a wave without a period: extremes that one sample in a thousand passes, after a running mean over a twentieth of the strongest
 * frequency's period. Depth and index stand for the whole record.
 */
function irregular(values: Float64Array, main: Line, rate: number, scatter: number): Made {
  const width = Math.max(1, Math.floor(rate / main.frequency / 20));
  const smooth = runningMean(values, width);
  const { index } = modulationOf(smooth);
  const light = beginning(smooth);
  const sorted = smooth.sort();
  const [low, high] = [at(sorted, Math.floor(0.001 * sorted.length)), at(sorted, Math.ceil(0.999 * sorted.length) - 1)];
  const noise = scatter / Math.sqrt(width);
  const sum = high + low;
  const depthUncertainty = (200 * Math.hypot(high, low) * noise * 3) / sum ** 2;
  const modulation = {
    depth: (100 * (high - low)) / sum,
    depthUncertainty,
    index,
    indexUncertainty: depthUncertainty / 200,
    noiseTakenOff: 0,
  };
  return { kind: 'irregular', modulation, light };
}

/** Frequency at which the record repeats: the strongest, or a part of it that other lines show. Undefined where it does not. */
function periodOf(light: TimeSeries, lines: readonly Line[], noise: number): number | undefined {
  const main = lines[0] as Line;
  const resolution = 2 / (at(light.times, light.times.length - 1) - at(light.times, 0));
  const has = (frequency: number) => lines.some((it) => Math.abs(it.frequency - frequency) < resolution);
  const divisor = DIVISORS.find((it) => has(main.frequency / it)) ?? 1;
  const base = tuned(light, main.frequency) / divisor;
  const nyquist = (0.5 * (light.times.length - 1)) / (at(light.times, light.times.length - 1) - at(light.times, 0));
  const isMultiple = ({ frequency }: Line) => {
    // Overtones beyond half the rate are mirrored back below it.
    const turns = [frequency, 2 * nyquist - frequency, 2 * nyquist + frequency].map((it) => it / base);
    return turns.some((it) => Math.abs(it - Math.round(it)) * base < resolution);
  };
  const others = lines.filter((it) => !isMultiple(it));
  if (others.some((it) => it.amplitude > OTHER_LINES * main.amplitude)) return undefined;
  return wanders(light, base * divisor, noise) ? undefined : base;
}

/** True where the parts of a record hold more of a frequency than the whole: its phase moves. */
function wanders(light: TimeSeries, frequency: number, noise: number): boolean {
  const count = light.values.length;
  const parts = Math.min(8, Math.floor((frequency * (at(light.times, count - 1) - at(light.times, 0))) / 4));
  if (parts < 2) return false;
  const whole = phasor(light, frequency, 0, count).amplitude;
  let sum = 0;
  for (let i = 0; i < parts; i++) {
    sum += phasor(light, frequency, Math.floor((i * count) / parts), Math.floor(((i + 1) * count) / parts)).amplitude;
  }
  // What noise alone adds to the amplitude of a part, at most.
  const ofParts = 3 * noise * Math.sqrt((3 * parts) / count);
  return whole + ofParts < (1 - WANDERING) * (sum / parts);
}

/** Twice the least deviation of a frequency in white noise, √6 σ / (π A T √n) (Cramér and Rao; from memory): what is done with halves is not the best. Hz. */
function frequencyScatter(
  noise: number,
  { amplitude }: Line,
  { duration, samples }: Pick<FlickerWaveform, 'duration' | 'samples'>,
) {
  return (2 * Math.sqrt(6) * noise) / (Math.PI * amplitude * duration * Math.sqrt(samples));
}

function extremes(values: Float64Array): [low: number, high: number, mean: number] {
  let [low, high, sum] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0];
  for (const it of values) {
    low = Math.min(low, it);
    high = Math.max(high, it);
    sum += it;
  }
  return [low, high, sum / values.length];
}

/** True where all but a few steps are alike. */
function isEven(times: Float64Array, step: number): boolean {
  let odd = 0;
  for (let i = 1; i < times.length; i++) {
    if (Math.abs(at(times, i) - at(times, i - 1) - step) > UNEVEN_STEP * step) odd++;
  }
  return odd <= UNEVEN_SHARE * (times.length - 1);
}

function runningMean(values: Float64Array, width: number): Float64Array {
  const result = new Float64Array(values.length - width + 1);
  let sum = 0;
  for (let i = 0; i < values.length; i++) {
    sum += at(values, i) - (i >= width ? at(values, i - width) : 0);
    if (i >= width - 1) result[i - width + 1] = sum / width;
  }
  return result;
}

const beginning = (values: Float64Array) => Array.from(values.subarray(0, DRAWN));

const scaled = (values: readonly number[], mean: number) => values.map((it) => it / mean);

import { at } from '../at.ts';
import {
  criticalBand,
  criticalBandwidth,
  prominentFrom,
  proximateWithin,
  TONES_FROM,
  TONES_TO,
} from './critical-band.ts';
import { type PowerSpectrum, powerOfTwo, powerSpectrum, type Samples } from './power-spectrum.ts';

/** A tone that stands out of the noise about it. */
export interface Tone {
  /** Hz */
  frequency: number;
  /** Tone-to-noise ratio, dB. */
  ratio: number;
  /** From which ratio on it is prominent, dB. */
  criterion: number;
  isProminent: boolean;
  /** Its own level, dB of full scale, not weighted. */
  level: number;
  /** Standard deviation of the ratio from stretch to stretch, dB. */
  scatter: number;
}

/** Tones of a clip, and what they were looked for in. */
export interface ToneFindings {
  spectrum: PowerSpectrum;
  /** The most prominent first. */
  tones: Tone[];
  /** Hz */
  upTo: number;
}

/** Seconds of a stretch: fine enough for tones at 100 Hz, short enough to average a clip of two seconds. */
const STRETCH = 0.4;
/** Bands to either side of a peak that hold a pure tone, by the window. */
const HALF_TONE = 2;
/** A candidate is this many dB above the middle of the critical band's narrow bands: noise averaged reaches half of it. */
const CANDIDATE = 9;
/** Lowest ratio that is listed, dB: nearer to the noise a tone is hardly heard. Our own choice. */
const LISTED_FROM = 0;

/** Where a ratio ends, dB. */
const HIGHEST_RATIO = 120;

/** Stretches that the scatter is taken from; a longer clip has no better one. */
const MOST_STRETCHES = 60;

/** Tones of a clip by tone-to-noise ratio; undefined where it is too short. */
export function findTones(sound: Samples): ToneFindings | undefined {
  const stretches: Float64Array[] = [];
  const spectrum = powerSpectrum(sound, powerOfTwo(STRETCH * sound.rate * Math.SQRT2), (powers) => {
    if (stretches.length < MOST_STRETCHES) stretches.push(powers.slice());
  });
  return spectrum && { spectrum, tones: tonesOf(spectrum, sound.rate, stretches), upTo: tonesUpTo(sound.rate) };
}

/** Highest frequency at which tones can be told: the critical band has to lie below half the rate. */
export function tonesUpTo(rate: number): number {
  // Cameras and sound cards filter the last tenth away.
  const end = 0.45 * rate;
  let frequency = Math.min(TONES_TO, end);
  while (frequency > TONES_FROM && criticalBand(frequency).to > end) frequency *= 0.99;
  return frequency;
}

/** Mean square of the tone in a stretch of bands, and what it stands in. */
interface Peak {
  band: number;
  from: number;
  to: number;
  power: number;
}

/**
 * Tones by tone-to-noise ratio, the most prominent first (ECMA-418-1, former ECMA-74 Annex D; formula from memory):
 * L_t is the tone's own level, L_n that of the noise in the critical band about it, brought from the width without tones
 * to the whole of it. Tones that are heard as one count together; others in the band count neither as tone nor as noise.
 * No correction for the room is made.
 */
function tonesOf({ step, powers }: PowerSpectrum, rate: number, stretches: readonly Float64Array[]): Tone[] {
  const highest = tonesUpTo(rate);
  const peaks: Peak[] = [];
  let band = Math.ceil(TONES_FROM / step);
  while (band * step <= highest) {
    // The middle of a critical band's narrow bands stands for a quarter of its width.
    const middle = middlePower(powers, step, band);
    const end = Math.min(highest / step, band + Math.max(1, (0.25 * criticalBandwidth(band * step)) / step));
    for (; band <= end; band += 1) {
      const here = at(powers, band);
      if (here <= at(powers, band - 1) || here < at(powers, band + 1)) continue;
      if (here >= middle * 10 ** (CANDIDATE / 10)) peaks.push(peakAt(powers, step, band, middle));
    }
  }
  const strongest = peaks.toSorted((a, b) => b.power - a.power);
  const apart = strongest.filter(
    (peak, i) => !strongest.slice(0, i).some((other) => Math.abs(other.band - peak.band) <= 2 * HALF_TONE),
  );
  const told: Peak[] = [];
  const tones: Tone[] = [];
  for (const peak of apart) {
    const frequency = middleOf(powers, peak) * step;
    const near = proximateWithin(frequency);
    if (told.some((it) => Math.abs(it.band - peak.band) * step < near)) continue;
    told.push(peak);
    const ratioIn = (of: Float64Array) => toneOf(of, step, peak, apart, near, frequency);
    const tone = ratioIn(powers);
    if (tone.ratio < LISTED_FROM) continue;
    const each = stretches.map((it) => ratioIn(it).ratio).filter(Number.isFinite);
    tones.push({ ...tone, scatter: each.length > 1 ? standardDeviation(each) : 0 });
  }
  return tones.sort((a, b) => b.ratio - b.criterion - (a.ratio - a.criterion));
}

function middlePower(powers: Float64Array, step: number, band: number): number {
  const { from, to } = criticalBand(band * step);
  const around = powers.slice(Math.max(1, Math.ceil(from / step)), Math.floor(to / step) + 1).sort();
  return at(around, Math.floor(around.length / 2));
}

function peakAt(powers: Float64Array, step: number, band: number, middle: number): Peak {
  // A fan's tone wavers: the tone reaches as far as the bands fall and stand out, up to a tenth of the critical band.
  const most = Math.max(HALF_TONE, Math.round((0.05 * criticalBandwidth(band * step)) / step));
  const reach = (way: 1 | -1) => {
    let i = HALF_TONE;
    while (i < most && (powers[band + way * (i + 1)] ?? 0) > 4 * middle) i += 1;
    return band + way * i;
  };
  const [first, last] = [reach(-1), reach(1)];
  let power = 0;
  for (let i = first; i <= last; i += 1) power += powers[i] ?? 0;
  return { band, from: first, to: last, power };
}

function standardDeviation(values: readonly number[]): number {
  const mean = values.reduce((sum, it) => sum + it, 0) / values.length;
  return Math.sqrt(values.reduce((sum, it) => sum + (it - mean) ** 2, 0) / (values.length - 1));
}

/** The middle of a peak's power, in bands. */
function middleOf(powers: Float64Array, { from, to, power }: Peak): number {
  let sum = 0;
  for (let i = from; i <= to; i += 1) sum += i * (powers[i] ?? 0);
  return sum / power;
}

function toneOf(
  powers: Float64Array,
  step: number,
  peak: Peak,
  all: readonly Peak[],
  near: number,
  frequency: number,
): Omit<Tone, 'scatter'> {
  const { from, to } = criticalBand(frequency);
  const [first, last] = [Math.max(1, Math.ceil(from / step)), Math.floor(to / step)];
  const isTone = new Uint8Array(last - first + 1);
  let tone = 0;
  for (const other of all) {
    const isHeardAsOne = other === peak || Math.abs(other.band - peak.band) * step < near;
    for (let i = Math.max(first, other.from); i <= Math.min(last, other.to); i += 1) {
      if (isTone[i - first]) continue;
      isTone[i - first] = 1;
      if (isHeardAsOne) tone += at(powers, i);
    }
  }
  let noise = 0;
  let bands = 0;
  for (let i = first; i <= last; i += 1) {
    if (isTone[i - first]) continue;
    noise += at(powers, i);
    bands += 1;
  }
  // Noise lies under the tone, too.
  const under = bands > 0 ? noise / bands : 0;
  const own = Math.max(0, tone - under * (isTone.length - bands));
  const width = isTone.length * step;
  const ratio = toneToNoiseRatio(10 * Math.log10(own), 10 * Math.log10(own + noise), {
    critical: width,
    total: width,
    tone: width - bands * step,
  });
  const criterion = prominentFrom(frequency);
  return { frequency, ratio, criterion, isProminent: ratio >= criterion, level: 10 * Math.log10(own) };
}

/**
 * Tone-to-noise ratio from levels in one critical band, dB: L_t - L_n with L_n = 10 lg(10^(L_tot/10) - 10^(L_t/10)) +
 * 10 lg(df_c / (df_tot - df_t)) (ECMA-418-1, from memory).
 *
 * @param total level of all in the band, dB
 * @param width of the critical band, of all bands in it and of the tone's, Hz
 */
export function toneToNoiseRatio(
  tone: number,
  total: number,
  width: { critical: number; total: number; tone: number },
): number {
  if (tone === Number.NEGATIVE_INFINITY) return tone;
  const noise =
    10 * Math.log10(10 ** (total / 10) - 10 ** (tone / 10)) +
    10 * Math.log10(width.critical / (width.total - width.tone));
  // A made tone may have no noise at all about it.
  return Math.min(HIGHEST_RATIO, tone - noise);
}

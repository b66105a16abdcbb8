import wavefile from 'wavefile';

/** Sound of a WAV file, one channel of it. */
export interface WavSound {
  /** Samples a second. */
  rate: number;
  /** From -1 to 1 of full scale, their mean taken off. */
  samples: Float32Array;
  channels: number;
  /** The one that was taken, from 1: the one with more sound. */
  channel: number;
  /** How a sample is written: `16-bit`, `32-bit float`. */
  format: string;
  /** Samples in runs of three or more at full scale. */
  clipped: number;
  /** Seconds of the whole file, of which no more than `LONGEST_CLIP` are kept. */
  seconds: number;
}

/** Seconds of a clip that are looked at. Our own choice: a fan says no more in an hour. */
export const LONGEST_CLIP = 60;
/** Largest file, MB: ten minutes of stereo in 24 bits. */
export const MOST_WAV_MEGABYTES = 160;

/** Why a file's sound can't be had. */
export type WavFault =
  | { kind: 'no-wav' }
  | { kind: 'packed'; what: string }
  | { kind: 'cut-short'; said: number; there: number }
  | { kind: 'empty' }
  | { kind: 'not-numbers' }
  | { kind: 'odd-rate'; rate: number };

/** A sample counts as clipped from here on, of full scale. */
const FULL = 0.9995;
const RUN = 3;

const FORMATS: Readonly<Record<string, { name: string; scale: number; offset?: number }>> = {
  '8': { name: '8-bit', scale: 128, offset: 128 },
  '16': { name: '16-bit', scale: 2 ** 15 },
  '24': { name: '24-bit', scale: 2 ** 23 },
  '32': { name: '32-bit', scale: 2 ** 31 },
  '32f': { name: '32-bit float', scale: 1 },
  '64': { name: '64-bit float', scale: 1 },
};

interface Header {
  audioFormat: number;
  numChannels: number;
  sampleRate: number;
  blockAlign: number;
  subformat?: number[];
}

/** Numbers of format tags: floating point, and "see further on". */
const FLOAT = 3;
const EXTENSIBLE = 0xfffe;
/** Recorders that write before they know how long it gets say so many bytes or more. */
const UNKNOWN_LENGTH = 0x7fff0000;

/** Reads a WAV file. What is broken is told, whatever the library says of it. */
export function wavSamples(bytes: Uint8Array): WavSound | WavFault {
  const wav = parsed(bytes);
  if (!wav) return { kind: 'no-wav' };
  const { numChannels, sampleRate, blockAlign, audioFormat } = wav.fmt as Header;
  const format = FORMATS[wav.bitDepth];
  if (!format) return { kind: 'packed', what: `format ${audioFormat}, ${wav.bitDepth} bits` };
  if (!(sampleRate >= 1000 && sampleRate <= 1e6)) return { kind: 'odd-rate', rate: sampleRate };
  const { chunkSize, samples: raw } = wav.data as { chunkSize: number; samples: Uint8Array };
  const there = raw.length;
  if (!(numChannels > 0 && blockAlign > 0) || there < blockAlign) return { kind: 'empty' };
  const perSecond = blockAlign * sampleRate;
  if (chunkSize > there && chunkSize < UNKNOWN_LENGTH) {
    return { kind: 'cut-short', said: chunkSize / perSecond, there: there / perSecond };
  }
  // A broken last frame is none.
  const kept = Math.min(Math.floor(there / blockAlign), Math.round(LONGEST_CLIP * sampleRate)) * blockAlign;
  wav.data = { ...wav.data, samples: raw.subarray(0, kept), chunkSize: kept };
  const all = channelsOf(wav, numChannels).map((it) => scaled(it, format));
  if (all.some((it) => it.some((sample) => !Number.isFinite(sample)))) return { kind: 'not-numbers' };
  const strongest = all.reduce((best, it, i) => (power(it) > power(all[best] ?? it) ? i : best), 0);
  const samples = all[strongest];
  if (!samples || samples.length === 0) return { kind: 'empty' };
  return {
    rate: sampleRate,
    samples: withoutMean(samples),
    channels: numChannels,
    channel: strongest + 1,
    format: format.name,
    clipped: clippedIn(samples),
    seconds: there / perSecond,
  };
}

function parsed(bytes: Uint8Array): wavefile.WaveFile | undefined {
  try {
    const wav = new wavefile.WaveFile(bytes);
    const { audioFormat, subformat } = wav.fmt as Header;
    if (audioFormat !== EXTENSIBLE || subformat?.[0] !== FLOAT) return wav;
    // The library takes such floats for whole numbers; written the short way it does not.
    const plain = Buffer.from(bytes);
    plain.writeUInt16LE(FLOAT, plain.indexOf('fmt ') + 8);
    return new wavefile.WaveFile(plain);
  } catch {
    return undefined;
  }
}

function channelsOf(wav: wavefile.WaveFile, many: number): Float64Array[] {
  try {
    const samples = wav.getSamples(false, Float64Array as never) as unknown as Float64Array | Float64Array[];
    return many === 1 ? [samples as Float64Array] : (samples as Float64Array[]);
  } catch {
    return [];
  }
}

function scaled(samples: Float64Array, { scale, offset = 0 }: { scale: number; offset?: number }): Float32Array {
  return Float32Array.from(samples, (it) => (it - offset) / scale);
}

function power(samples: Float32Array): number {
  let sum = 0;
  for (const it of samples) sum += it * it;
  return sum;
}

function withoutMean(samples: Float32Array): Float32Array {
  let sum = 0;
  for (const it of samples) sum += it;
  const mean = sum / samples.length;
  return samples.map((it) => it - mean);
}

function clippedIn(samples: Float32Array): number {
  let clipped = 0;
  let run = 0;
  for (const it of samples) {
    run = Math.abs(it) >= FULL ? run + 1 : 0;
    if (run === RUN) clipped += RUN;
    else if (run > RUN) clipped += 1;
  }
  return clipped;
}

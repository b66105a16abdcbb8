import wavefile from 'wavefile';
import type { Bytes } from './file-bytes.ts';

/** How a WAV file is written, and how long it is. */
export interface WavHead {
  /** Samples a second. */
  rate: number;
  channels: number;
  /** How a sample is written: `16-bit`, `32-bit float`. */
  format: string;
  /** Seconds of the whole file. */
  seconds: number;
}

/** Sound of a WAV file, one channel of it. */
export interface WavSound extends WavHead {
  /** From -1 to 1 of full scale, their mean taken off; no more than `LONGEST_CLIP` seconds are kept. */
  samples: Float32Array;
  /** The channel that was taken, from 1: the one with more sound. */
  channel: number;
  /** Samples in runs of three or more at full scale. */
  clipped: number;
}

/** Seconds of a clip that are looked at. Our own choice: a fan says no more in an hour. */
export const LONGEST_CLIP = 60;

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
  subformat?: number[];
}

/** Numbers of format tags: floating point, and "see further on". */
const FLOAT = 3;
const EXTENSIBLE = 0xfffe;
/** Recorders that write before they know how long it gets say so many bytes or more. */
const UNKNOWN_LENGTH = 0x7fff0000;

/** Bytes of the head that are looked at; a second time, where a recorder has put a long text before its sound. */
const HEADS = [64 * 1024, 4 * 1024 * 1024] as const;
/** Bytes of sound that are unpacked at a time. */
const PIECE = 256 * 1024;

/** What is needed to unpack pieces of the sound. */
interface Opened extends WavHead {
  wav: wavefile.WaveFile;
  /** Place of the first sample in the file. */
  start: number;
  /** Bytes of one sample of all channels. */
  frame: number;
  /** How many of those are looked at. */
  frames: number;
  scaled: (sample: number) => number;
}

/** What a WAV file's head says. What is broken is told, whatever the library says of it. */
export function wavHead(bytes: Bytes): WavHead | WavFault {
  const found = opened(bytes);
  if ('kind' in found) return found;
  const { rate, channels, format, seconds } = found;
  return { rate, channels, format, seconds };
}

/** Reads the first minute of a WAV file, a piece at a time. */
export function wavSamples(bytes: Bytes): WavSound | WavFault {
  const found = opened(bytes);
  if ('kind' in found) return found;
  const { rate, channels, format, seconds, frames, scaled } = found;
  const channel = channels === 1 ? 0 : strongest(found, bytes);
  const samples = new Float32Array(frames);
  let at = 0;
  for (const piece of pieces(found, bytes)) {
    for (const it of piece[channel] ?? []) samples[at++] = scaled(it);
  }
  if (channel < 0 || samples.some((it) => !Number.isFinite(it))) return { kind: 'not-numbers' };
  if (at < frames) return { kind: 'empty' };
  const clipped = clippedIn(samples);
  takeMeanOff(samples);
  return { rate, samples, channels, channel: channel + 1, format, clipped, seconds };
}

function opened(bytes: Bytes): Opened | WavFault {
  const parsed = parsedHead(bytes);
  if (!parsed) return { kind: 'no-wav' };
  const { wav, head } = parsed;
  const { numChannels: channels, sampleRate: rate, audioFormat } = wav.fmt as Header;
  const format = FORMATS[wav.bitDepth];
  if (!format) return { kind: 'packed', what: `format ${audioFormat}, ${wav.bitDepth} bits` };
  if (!(rate >= 1000 && rate <= 1e6)) return { kind: 'odd-rate', rate };
  const { chunkSize: said, samples } = wav.data as { chunkSize: number; samples: Buffer };
  // The library has cut it out of the head, as a view of it.
  const start = samples.byteOffset - head.byteOffset;
  const isKnown = said < UNKNOWN_LENGTH;
  const there = Math.min(isKnown ? said : Number.POSITIVE_INFINITY, bytes.size - start);
  const { name, scale, offset = 0 } = format;
  const frame = (channels * Number.parseInt(wav.bitDepth, 10)) / 8;
  if (!(frame > 0 && there >= frame)) return { kind: 'empty' };
  const perSecond = frame * rate;
  if (isKnown && said > there) return { kind: 'cut-short', said: said / perSecond, there: there / perSecond };
  return {
    ...{ wav, start, frame, rate, channels, format: name, seconds: there / perSecond },
    // A broken last frame is none.
    frames: Math.min(Math.floor(there / frame), Math.round(LONGEST_CLIP * rate)),
    scaled: (sample) => (sample - offset) / scale,
  };
}

function parsedHead(bytes: Bytes): { wav: wavefile.WaveFile; head: Buffer } | undefined {
  for (const length of HEADS) {
    const head = Buffer.from(bytes.read(0, Math.min(length, bytes.size)));
    try {
      const wav = new wavefile.WaveFile(head);
      const { audioFormat, subformat } = wav.fmt as Header;
      if (audioFormat !== EXTENSIBLE || subformat?.[0] !== FLOAT) return { wav, head };
      // The library takes such floats for whole numbers; written the short way it does not.
      head.writeUInt16LE(FLOAT, head.indexOf('fmt ') + 8);
      return { wav: new wavefile.WaveFile(head), head };
    } catch {
      if (head.length === bytes.size) break;
    }
  }
  return undefined;
}

/** Samples of each channel, a piece of the file at a time; none where it can't be unpacked. */
function* pieces({ wav, start, frame, frames, channels }: Opened, bytes: Bytes): Generator<readonly Float64Array[]> {
  const many = Math.max(1, Math.floor(PIECE / frame));
  for (let from = 0; from < frames; from += many) {
    const samples = bytes.read(start + from * frame, Math.min(many, frames - from) * frame);
    wav.data = { ...wav.data, samples, chunkSize: samples.length };
    yield channelsOf(wav, channels);
  }
}

function channelsOf(wav: wavefile.WaveFile, many: number): readonly Float64Array[] {
  try {
    const samples = wav.getSamples(false, Float64Array as never) as unknown as Float64Array | Float64Array[];
    return many === 1 ? [samples as Float64Array] : (samples as Float64Array[]);
  } catch {
    return [];
  }
}

/** The channel with more sound, from 0; -1 where one has samples that are no numbers. */
function strongest(found: Opened, bytes: Bytes): number {
  const power = new Float64Array(found.channels);
  for (const piece of pieces(found, bytes)) {
    piece.forEach((samples, channel) => {
      for (const it of samples) power[channel] = (power[channel] as number) + Math.fround(found.scaled(it)) ** 2;
    });
  }
  return power.every(Number.isFinite) ? power.indexOf(Math.max(...power)) : -1;
}

function takeMeanOff(samples: Float32Array): void {
  let sum = 0;
  for (const it of samples) sum += it;
  const mean = sum / samples.length;
  for (let i = 0; i < samples.length; i++) samples[i] = (samples[i] as number) - mean;
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

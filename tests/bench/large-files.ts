/** Files as meters write them, of any size. */
import { closeSync, openSync, writeSync } from 'node:fs';

const ROWS_AT_ONCE = 20_000;
const MOMENT = Date.UTC(2026, 10, 21);

/** Light that a hand moves over, mW/cm². */
const light = (row: number) => (50 + 30 * Math.sin(row / 3e4)).toFixed(3);
/** The same, of a panel that warms up: s since switching on at 100 rows a second. */
const warming = (row: number) => (50 + 5 * Math.exp(-row / 6e4)).toFixed(3);
/** 100 Hz at 100,000 rows a second. */
const flickering = (row: number) => (1 + 0.3 * Math.sin((2 * Math.PI * row) / 1000)).toFixed(4);
/** Beside it a second tone that is no multiple of the first. */
const beating = (row: number) => (Number(flickering(row)) + 0.2 * Math.sin((2 * Math.PI * row) / 777.7)).toFixed(4);
/** A clock's time of day that leaves rows out now and then, so that steps are uneven. */
const clock = (row: number) =>
  new Date(MOMENT + ((10 * row + 100 * Math.floor(row / 1000)) % 86_000_000)).toISOString().slice(11, 23);

/** Kinds of large files, each with its head and its rows. */
export const LARGE_FILES = {
  sweep: {
    kind: 'sweep',
    head: 'Time (s),Irradiance (mW/cm2)',
    row: (i: number) => `${(i / 100).toFixed(2)},${light(i)}`,
  },
  'sweep by the clock, uneven': {
    kind: 'sweep',
    head: 'Clock,Irradiance (mW/cm2)',
    row: (i: number) => `${clock(i)},${light(i)}`,
  },
  'warm-up log': {
    kind: 'warmUp',
    head: 'Time (s),Irradiance (mW/cm2)',
    row: (i: number) => `${(i / 100).toFixed(2)},${warming(i)}`,
  },
  'flicker waveform': {
    kind: 'waveform',
    head: 'Time (ms),Light (V)',
    row: (i: number) => `${(i / 100).toFixed(2)},${flickering(i)}`,
  },
  'flicker waveform, irregular': {
    kind: 'waveform',
    head: 'Time (ms),Light (V)',
    row: (i: number) => `${(i / 100).toFixed(2)},${beating(i)}`,
  },
  'rows that are no spectrum': {
    kind: 'spectrum',
    head: 'Wavelength (nm),Irradiance (mW/cm2/nm)',
    row: (i: number) => `${(300 + i / 1e5).toFixed(5)},${light(i)}`,
  },
} as const;

/** Writes a table until it has so many bytes. */
export function writeTable(
  path: string,
  { head, row }: { head: string; row: (i: number) => string },
  bytes: number,
): void {
  const file = openSync(path, 'w');
  try {
    let written = writeSync(file, `${head}\n`);
    for (let i = 0; written < bytes; ) {
      const rows: string[] = [];
      for (const end = i + ROWS_AT_ONCE; i < end; i++) rows.push(row(i));
      written += writeSync(file, `${rows.join('\n')}\n`);
    }
  } finally {
    closeSync(file);
  }
}

/** Writes a clip of a tone in 24-bit stereo until it has so many bytes. */
export function writeClip(path: string, bytes: number): void {
  const [rate, frame] = [48_000, 6];
  const data = Math.floor((bytes - 44) / frame) * frame;
  const head = Buffer.alloc(44);
  head.write('RIFF');
  head.writeUInt32LE(36 + data, 4);
  head.write('WAVEfmt ', 8);
  head.writeUInt32LE(16, 16);
  head.writeUInt16LE(1, 20);
  head.writeUInt16LE(2, 22);
  head.writeUInt32LE(rate, 24);
  head.writeUInt32LE(rate * frame, 28);
  head.writeUInt16LE(frame, 32);
  head.writeUInt16LE(24, 34);
  head.write('data', 36);
  head.writeUInt32LE(data, 40);
  // A second of a tone, over and over.
  const second = Buffer.alloc(rate * frame);
  for (let i = 0; i < rate; i++) {
    const sample = Math.round(2 ** 20 * Math.sin((2 * Math.PI * 1000 * i) / rate));
    second.writeIntLE(sample, i * frame, 3);
    second.writeIntLE(sample >> 2, i * frame + 3, 3);
  }
  const file = openSync(path, 'w');
  try {
    writeSync(file, head);
    for (let left = data; left > 0; left -= second.length) writeSync(file, second, 0, Math.min(left, second.length));
  } finally {
    closeSync(file);
  }
}

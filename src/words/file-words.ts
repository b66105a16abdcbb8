import type { BenchFileKind } from '../content/read/files/file-kind.ts';

/** What files of each kind are called in a table. */
export const FILE_KINDS: Readonly<Record<BenchFileKind, string>> = {
  sweep: 'Sweep',
  warmUp: 'Warm-up log',
  waveform: 'Flicker waveform',
  wallPhoto: 'Photo of the wall',
  sound: 'Sound clip',
  other: 'Other file',
  spectrum: 'Spectrum',
};

const PARTS: Readonly<Record<string, string>> = {
  red: 'red alone',
  nearInfrared: 'near-infrared alone',
  combined: 'both channels',
  on: 'panel on',
  off: 'panel off',
  calibration: 'calibration',
};

/** What a file is of, by where a session names it: `red alone`; empty where its kind says it all. */
export function fileOf(field: readonly PropertyKey[]): string {
  const last = field.at(-1);
  if (field.length < 2 || last === undefined) return '';
  return typeof last === 'number' ? '' : (PARTS[String(last)] ?? String(last));
}

/** `812 bytes`, `25.3 kB`, `1.2 MB`: thousands, as browsers tell them. */
export function sizeText(bytes: number): string {
  if (bytes < 1000) return `${bytes} bytes`;
  const [value, unit] = bytes < 1e6 ? [bytes / 1e3, 'kB'] : [bytes / 1e6, 'MB'];
  return `${value < 100 ? Number(value.toPrecision(3)) : Math.round(value)} ${unit}`;
}

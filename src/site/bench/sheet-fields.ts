/**
 * The blanks of a run sheet, each with its field in a session of the content file; a test holds them against the schema.
 * What the grid and the places past the edges have is in `browser/sheet-points.ts`.
 */
import type { MODE_KEYS, ModeKey } from '../../content/schema/session.ts';

/** In the order of the procedure: both channels first, since the panel has settled with both on. */
export const MODE_ORDER = ['combined', 'red', 'nearInfrared'] as const satisfies readonly (typeof MODE_KEYS)[number][];

export const MODE_NAMES: Readonly<Record<ModeKey, string>> = {
  combined: 'Both channels',
  red: 'Red alone',
  nearInfrared: 'Near-infrared alone',
};

/** A column of the table of modes: undefined where a mode has no such field. */
export const MODE_BLANKS: ReadonlyArray<{ head: string; unit: string; path: (mode: ModeKey) => string | undefined }> = [
  { head: 'Peak', unit: 'mW/cm²', path: (mode) => `peak.${mode}` },
  { head: 'Draw', unit: 'W', path: (mode) => `mains.${mode}` },
  { head: 'Flicker', unit: 'Hz', path: (mode) => `flicker.${mode}.frequency` },
  { head: 'Depth', unit: '%', path: (mode) => `flicker.${mode}.percent` },
  { head: 'Peak wavelength', unit: 'nm', path: (mode) => single(mode, 'peak') },
  { head: 'Half width', unit: 'nm', path: (mode) => single(mode, 'fwhm') },
];

const single = (mode: ModeKey, field: string) => (mode === 'combined' ? undefined : `wavelengths.${mode}.${field}`);

/** What is read with the panel off and on, from the same place. */
export const OFF_AND_ON = [
  { name: 'Magnetic', field: 'magnetic', unit: 'µT', hasFrequency: true },
  { name: 'Electric', field: 'electric', unit: 'V/m', hasFrequency: true },
  { name: 'Radio', field: 'radio', unit: 'mW/m²', hasFrequency: false },
  { name: 'Sound, max hold', field: 'sound', unit: 'dB(A)', hasFrequency: false },
] as const;

/** Readings of the sweep at one distance. */
export const SWEEP_READINGS = [
  { head: 'Both channels', field: 'centre' },
  { head: 'Red alone', field: 'red' },
  { head: 'Near-infrared alone', field: 'nearInfrared' },
] as const;

/** What a session says in words. */
export const WORDS = [
  { head: 'Hot spots, in words', field: 'hotSpots' },
  { head: 'Photos, what they show', field: 'photos' },
  { head: 'Notes', field: 'notes' },
] as const;

/** At the head of the sheet, with what goes there as a rule. */
export const HEAD = [
  { head: 'Method', field: 'methodVersion' },
  { head: 'Room, °C', field: 'roomTemperature' },
  { head: 'Distance', field: 'distance' },
] as const;

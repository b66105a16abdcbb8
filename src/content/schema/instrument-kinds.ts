import type { QuantityName } from './units.ts';

/** What an instrument reads; a session names one instrument for each that it used. */
export const INSTRUMENT_KINDS = [
  'irradiance',
  'spectrum',
  'mains',
  'magnetic',
  'electric',
  'radio',
  'sound',
  'flicker',
  'length',
  'temperature',
] as const;

export type InstrumentKind = (typeof INSTRUMENT_KINDS)[number];

/** The quantity that each kind of instrument shows on its display. */
export const INSTRUMENT_QUANTITY: Record<InstrumentKind, QuantityName> = {
  irradiance: 'irradiance',
  spectrum: 'wavelength',
  mains: 'power',
  magnetic: 'magnetic',
  electric: 'electric',
  radio: 'radio',
  sound: 'sound',
  flicker: 'percent',
  length: 'length',
  temperature: 'temperature',
};

/** What only some kinds of instruments can state; elsewhere nothing would heed it. */
export const KIND_FIELDS = {
  repeatabilityDecibels: 'sound',
  spectralResponse: 'irradiance',
  angularResponse: 'irradiance',
  responsivity: 'irradiance',
  bandwidth: 'spectrum',
  powerError: 'spectrum',
} as const;

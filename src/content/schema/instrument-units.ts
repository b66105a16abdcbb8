import { ownField } from './block.ts';
import type { InstrumentFile, InstrumentKind } from './instrument.ts';
import { normaliseUnit, QUANTITIES, type QuantityKind, type QuantityName } from './units.ts';

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

/** From an instrument's display unit to the canonical one; undefined for a unit of something else. */
export function instrumentUnit(instrument: InstrumentFile): { factor: number; offset?: number } | undefined {
  const { units }: QuantityKind = QUANTITIES[INSTRUMENT_QUANTITY[instrument.measures]];
  return ownField(units, normaliseUnit(instrument.unit));
}

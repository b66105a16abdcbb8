import { ownField } from './block.ts';
import type { InstrumentQuantity } from './instrument.ts';
import { INSTRUMENT_QUANTITY } from './instrument-kinds.ts';
import { normaliseUnit, QUANTITIES, type QuantityKind } from './units.ts';

/** From an instrument's display unit to the canonical one; undefined for a unit of something else. */
export function instrumentUnit({
  measures,
  unit,
}: Pick<InstrumentQuantity, 'measures' | 'unit'>): { factor: number; offset?: number } | undefined {
  const { units }: QuantityKind = QUANTITIES[INSTRUMENT_QUANTITY[measures]];
  return ownField(units, normaliseUnit(unit));
}

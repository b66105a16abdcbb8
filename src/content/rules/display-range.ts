import { texts } from '../read/fields.ts';
import type { Source } from '../read/source.ts';
import { INSTRUMENT_QUANTITY } from '../schema/instrument-kinds.ts';
import { parseQuantity } from '../schema/quantity.ts';
import type { StatedQuantity } from './stated-quantities.ts';

/** Both ends of what a display shows of a quantity: in the canonical unit, and as the file has it. */
export interface DisplayRange {
  from: number;
  to: number;
  /** As written, without the unit. */
  ends: readonly [from: number, to: number];
  unit: string;
}

/** What converting a unit may leave behind a reading at the very end of the range, as a share of it. */
export const RANGE_DUST = 1e-9;

/** The range of a display; undefined where its file does not say so in a way that fits, which is a problem of that file. */
export function displayRange(quantity: StatedQuantity | undefined): DisplayRange | undefined {
  const unit = quantity?.of('unit')[0]?.value;
  const [from, to] = ['from', 'to'].map((end) => quantity?.of('range', end)[0]?.value);
  if (!quantity || typeof unit !== 'string') return undefined;
  if (typeof from !== 'number' || typeof to !== 'number' || to <= from) return undefined;
  const canonical = (end: number) => {
    const parsed = parseQuantity(`${end} ${unit}`, INSTRUMENT_QUANTITY[quantity.kind]);
    return 'reading' in parsed ? parsed.reading.value : undefined;
  };
  const [low, high] = [canonical(from), canonical(to)];
  return low === undefined || high === undefined ? undefined : { from: low, to: high, ends: [from, to], unit };
}

/** What an instrument's file calls it, within a sentence. */
export function meterName(instrument: Source): string {
  const name = texts(instrument, 'name')[0]?.value ?? 'meter';
  return name.charAt(0).toLowerCase() + name.slice(1);
}

import { type Field, fields } from '../read/fields.ts';
import type { Source } from '../read/source.ts';
import { isBlock } from '../schema/block.ts';
import type { InstrumentKind } from '../schema/instrument-kinds.ts';
import { statedQuantities } from './stated-quantities.ts';

/** Every calibration that an instrument's file states, one block or a list of them, at its top or for one quantity. */
export function calibrationsOf(instrument: Source | undefined): Field[] {
  if (!instrument) return [];
  return [
    ...fields(instrument.data, ['calibration']),
    ...fields(instrument.data, ['calibrations', '*']),
    ...Object.keys(fields(instrument.data, ['quantities'])[0]?.value ?? {}).flatMap((kind) =>
      fields(instrument.data, ['quantities', kind, 'calibrations', '*']),
    ),
  ].filter(({ value }) => isBlock(value));
}

/** Those that hold for one quantity. */
export function calibrationsFor(instrument: Source | undefined, kind: InstrumentKind): Field[] {
  const quantity = statedQuantities(instrument).find((it) => it.kind === kind);
  const list = quantity ? quantity.of('calibrations', '*').filter(({ value }) => isBlock(value)) : [];
  return list.length > 0 ? list : calibrationsOf(instrument);
}

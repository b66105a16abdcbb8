import { type Field, fields } from '../read/fields.ts';
import type { Source } from '../read/source.ts';
import { isBlock } from '../schema/block.ts';

/** Every calibration that an instrument's file states, one block or a list of them. */
export function calibrationsOf(instrument: Source | undefined): Field[] {
  if (!instrument) return [];
  return [...fields(instrument.data, ['calibration']), ...fields(instrument.data, ['calibrations', '*'])].filter(
    ({ value }) => isBlock(value),
  );
}

import type { Source } from '../read/source.ts';
import { type Field, fields } from './fields.ts';

/** Every calibration that an instrument's file states, one block or a list of them. */
export function calibrationsOf(instrument: Source | undefined): Field[] {
  if (!instrument) return [];
  return [...fields(instrument.data, ['calibration']), ...fields(instrument.data, ['calibrations', '*'])].filter(
    ({ value }) => typeof value === 'object' && value !== null && !Array.isArray(value),
  );
}

import {
  INSTRUMENT_KINDS,
  type InstrumentFile,
  type InstrumentKind,
  quantityOf,
} from '../content/schema/instrument.ts';
import { calibrationDue, calibrationOn } from './instruments.ts';

/** For each kind of reading an instrument whose calibration holds. */
export interface HeldInstruments {
  chosen: Partial<Record<InstrumentKind, string>>;
  /** Kinds that there are instruments for, none of which is calibrated on that day. */
  lapsed: readonly InstrumentKind[];
}

/**
 * For each kind the instrument whose calibration holds on a day, the one that was calibrated last.
 *
 * @param day `YYYY-MM-DD`
 */
export function heldInstruments(instruments: ReadonlyMap<string, InstrumentFile>, day: string): HeldInstruments {
  const chosen: HeldInstruments['chosen'] = {};
  const lapsed: InstrumentKind[] = [];
  for (const kind of INSTRUMENT_KINDS) {
    const reading = [...instruments].flatMap(([id, file]) => {
      const quantity = quantityOf(file, kind);
      return quantity ? [{ id, calibration: calibrationOn(quantity, day) }] : [];
    });
    const [best] = reading
      .flatMap(({ id, calibration }) =>
        calibration && calibrationDue(calibration) >= day ? [{ id, date: calibration.date }] : [],
      )
      .toSorted((a, b) => b.date.localeCompare(a.date) || a.id.localeCompare(b.id));
    if (best) chosen[kind] = best.id;
    else if (reading.length > 0) lapsed.push(kind);
  }
  return { chosen, lapsed };
}

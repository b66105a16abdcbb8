import type { Ledger, SessionEntry } from '../../ledger/ledger.ts';
import { statedUncertainty } from '../../words/stated-uncertainty.ts';
import { publishedPanels } from './data-parts.ts';

/** A calibration as it counted for a session. */
interface CalibrationData {
  holds_until: string;
  uncertainty: string;
}

/** What the calibrations said that sessions of published panels rest on, by instrument and day. */
export function instrumentsData(ledger: Ledger): Record<string, Record<string, CalibrationData>> {
  const data: Record<string, Record<string, CalibrationData>> = {};
  for (const { instruments } of publishedPanels(ledger).flatMap((it) => it.sessions)) {
    for (const { quantityId: id, calibration, unit } of instruments) {
      data[id] ??= {};
      if (!calibration) continue;
      data[id][calibration.date] ??= {
        holds_until: calibration.due,
        uncertainty: statedUncertainty({ ...calibration, unit }),
      };
    }
  }
  return data;
}

/** An instrument, the day of the calibration that counted (null before the first), and that of its readings if it is an earlier one. */
type UsedRow = [id: string, calibration: string | null, readOn?: string];

export type UsedInstruments = Readonly<Record<string, UsedRow>>;

/** The instruments of a session by what they read. */
export function usedData({ instruments, date }: SessionEntry): UsedInstruments {
  return Object.fromEntries(
    instruments.map(({ kind, quantityId: id, readOn, calibration }): [string, UsedRow] => {
      const counted = calibration?.date ?? null;
      return [kind, readOn === date ? [id, counted] : [id, counted, readOn]];
    }),
  );
}

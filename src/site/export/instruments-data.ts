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

/** The instruments of a session, each with the day of the calibration that counted; null before the first. */
export function usedData({ instruments }: SessionEntry): Record<string, [id: string, calibration: string | null]> {
  return Object.fromEntries(
    instruments.map(({ kind, quantityId: id, calibration }) => [kind, [id, calibration?.date ?? null]]),
  );
}

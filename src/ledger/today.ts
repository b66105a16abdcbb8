import { formatISO } from 'date-fns/formatISO';
import { fromUnixTime } from 'date-fns/fromUnixTime';
import { isValid } from 'date-fns/isValid';
import { parseISO } from 'date-fns/parseISO';
import { UsageError } from '../content/read/usage-error.ts';

/** The last second of the year 9999; later days have no ISO date of ten characters. */
const LAST_SECOND = 253_402_300_799;

/**
 * The day the guide is built for. `LEDGER_TODAY` (a day) or `SOURCE_DATE_EPOCH` (seconds, as reproducible
 * builds set it) fix it, so that a build can be repeated byte for byte on another day.
 *
 * @throws where one of them is set to something that is no date
 */
export function todayFrom(environment: Readonly<Record<string, string | undefined>>, now: Date): string {
  const { LEDGER_TODAY, SOURCE_DATE_EPOCH } = environment;
  if (LEDGER_TODAY) {
    if (!/^\d{4}-\d{2}-\d{2}$/.test(LEDGER_TODAY) || !isValid(parseISO(LEDGER_TODAY))) {
      throw new UsageError(`LEDGER_TODAY is "${LEDGER_TODAY}"; wanted a day as YYYY-MM-DD`);
    }
    return LEDGER_TODAY;
  }
  if (SOURCE_DATE_EPOCH) {
    if (!/^\d+$/.test(SOURCE_DATE_EPOCH) || Number(SOURCE_DATE_EPOCH) > LAST_SECOND)
      throw new UsageError(`SOURCE_DATE_EPOCH is "${SOURCE_DATE_EPOCH}"; wanted seconds since 1970`);
    return fromUnixTime(Number(SOURCE_DATE_EPOCH)).toISOString().slice(0, 10);
  }
  return formatISO(now, { representation: 'date' });
}

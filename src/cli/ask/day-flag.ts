import { UsageError } from '../../content/read/usage-error.ts';
import { dayIn } from './cell.ts';

/**
 * The day of `--date`; today where it is left out.
 *
 * @throws UsageError where it is no day, or one that lies ahead
 */
export function dayFlag(text: string | undefined, today: string): string {
  if (text === undefined) return today;
  const day = dayIn(text, today);
  if ('value' in day) return day.value;
  throw new UsageError(`--date ${text}: wanted ${day.wanted}${day.hint ? `; ${day.hint}` : ''}. Nothing was written.`);
}

/** Whether a meter's calibration holds on the day of a session. No DOM. */
import { differenceInCalendarDays } from 'date-fns/differenceInCalendarDays';
import { parseISO } from 'date-fns/parseISO';
import { showDate } from '../../../words/format.ts';

/** First and last day of a calibration, YYYY-MM-DD. */
export interface CalibrationSpan {
  date: string;
  due: string;
}

export interface CalibrationState {
  isExpired: boolean;
  text: string;
}

const days = (count: number) => `${count}\u00a0${count === 1 ? 'day' : 'days'}`;

/** What to know of a meter's calibrations on a day: the one that counts then, its last day, and how long that is off. */
export function calibrationState(spans: readonly CalibrationSpan[], day: string): CalibrationState {
  const counting = spans.filter((it) => it.date <= day).toSorted((a, b) => b.date.localeCompare(a.date))[0];
  if (!counting) return { isExpired: true, text: `not calibrated yet on ${showDate(day)}` };
  const left = differenceInCalendarDays(parseISO(counting.due), parseISO(day));
  if (left < 0) return { isExpired: true, text: `expired ${showDate(counting.due)}, ${days(-left)} before` };
  return { isExpired: false, text: `holds to ${showDate(counting.due)}, next due in ${days(left)}` };
}

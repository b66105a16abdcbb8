import { addMonths } from 'date-fns/addMonths';
import { differenceInCalendarMonths } from 'date-fns/differenceInCalendarMonths';
import { formatISO } from 'date-fns/formatISO';
import { parseISO } from 'date-fns/parseISO';
import { startOfMonth } from 'date-fns/startOfMonth';
import { showMonth } from '../../words/format.ts';
import { pixels, type Tick } from '../shared/browser/plot.ts';

/** An axis of days. */
export interface TimeAxis {
  place(day: string): number;
  ticks: Tick[];
}

/** Months between two ticks, the least that leave their words room. */
const STEPS = [1, 2, 3, 6, 12, 24, 60, 120];

/**
 * An axis from one day to another, with ticks at the first of months.
 *
 * @param ends where the two days lie, px
 * @param room that the words of a tick need, px
 */
export function timeAxis(
  [from, until]: readonly [string, string],
  [left, right]: readonly [number, number],
  room: number,
): TimeAxis {
  const [start, end] = [Date.parse(from), Date.parse(until)];
  const place = (day: string) => pixels(left + ((right - left) * (Date.parse(day) - start)) / Math.max(1, end - start));
  const months = differenceInCalendarMonths(parseISO(until), parseISO(from));
  const step = STEPS.find((it) => (months / it) * room <= right - left) ?? 120;
  // From the January of a round year, so that ticks lie at the same months in every year.
  const year = Number(from.slice(0, 4));
  const first = startOfMonth(parseISO(`${year - (year % 10)}-01-01`));
  const ticks: Tick[] = [];
  for (let month = first; ; month = addMonths(month, step)) {
    const day = formatISO(month, { representation: 'date' });
    if (day > until) break;
    if (day >= from) ticks.push({ at: place(day), text: showMonth(day) });
  }
  return { place, ticks };
}

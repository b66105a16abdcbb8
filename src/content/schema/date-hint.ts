const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

/** What to write where a day is wanted as YYYY-MM-DD and something like a day stands; undefined for anything else. */
export function dateHint(value: unknown): string | undefined {
  if (typeof value !== 'string' && typeof value !== 'number') return undefined;
  const text = String(value).trim();

  const yearFirst = /^(\d{4})[-/. ]?(\d{1,2})[-/. ]?(\d{1,2})(?:[T ].*)?$/.exec(text);
  if (yearFirst) {
    const [, year = 0, month = 0, day = 0] = yearFirst.map(Number);
    const fault = faultOf(year, month, day);
    if (!fault) return `write ${iso(year, month, day)}`;
    // 2026-22-11: the two in the other order.
    return month > 12 && !faultOf(year, day, month) ? `${fault}; is it ${iso(year, day, month)}?` : fault;
  }

  const yearLast = /^(\d{1,2})[-/. ]+(\d{1,2})[-/. ]+(\d{4})$/.exec(text);
  if (yearLast) {
    const [, first = 0, second = 0, year = 0] = yearLast.map(Number);
    // The day first, as in most of the world; the month first, as in some of it.
    const readings = [iso(year, second, first), iso(year, first, second)].filter((_, i) =>
      i === 0 ? !faultOf(year, second, first) : !faultOf(year, first, second),
    );
    const [one, other] = [...new Set(readings)];
    if (one && other) return `write ${one} or ${other}, whichever day it was`;
    return one ? `write ${one}` : (faultOf(year, second, first) ?? undefined);
  }

  const named = wordsOf(text);
  if (!named) return undefined;
  return faultOf(named.year, named.month, named.day) ?? `write ${iso(named.year, named.month, named.day)}`;
}

/** `22 Nov 2026`, `22nd of November, 2026`, `Nov 22, 2026`. */
function wordsOf(text: string): { year: number; month: number; day: number } | undefined {
  const parts =
    /^(?<day>\d{1,2})(?:st|nd|rd|th|\.)?[-\s]+(?:of\s+)?(?<month>[a-z]{3,9})\.?,?[-\s]+(?<year>\d{4})$/i.exec(text) ??
    /^(?<month>[a-z]{3,9})\.?\s+(?<day>\d{1,2})(?:st|nd|rd|th)?,?\s+(?<year>\d{4})$/i.exec(text);
  const { day, month: name = '', year } = parts?.groups ?? {};
  const month = MONTHS.findIndex((it) => it.toLowerCase().startsWith(name.toLowerCase())) + 1;
  return name && month > 0 ? { year: Number(year), month, day: Number(day) } : undefined;
}

/** Why there is no such day. */
function faultOf(year: number, month: number, day: number): string | undefined {
  if (month < 1 || month > 12) return `there is no month ${month}`;
  const days = new Date(Date.UTC(year, month, 0)).getUTCDate();
  if (day >= 1 && day <= days) return undefined;
  const name = `${MONTHS[month - 1]}${month === 2 ? ` ${year}` : ''}`;
  return day < 1 ? 'there is no day 0' : `${name} has ${days} days`;
}

function iso(year: number, month: number, day: number): string {
  return `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
}

/** What a cell of a table holds. */
export type CellForm = 'number' | 'clock' | 'date' | 'date-time' | 'text';

/** How numbers are written in a table. */
export type DecimalSign = '.' | ',';

const NUMBERS: Readonly<Record<DecimalSign, RegExp>> = {
  '.': /^[+\-−]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/,
  ',': /^[+\-−]?(?:\d+,?\d*|,\d+)(?:[eE][+-]?\d+)?$/,
};

const CLOCK = /^(\d{1,2}):(\d{2}):(\d{2}(?:[.,]\d+)?)(?: ?([AaPp])\.?[Mm]\.?)?$/;
const DATE = /^(?:(\d{4})[-/](\d{1,2})[-/](\d{1,2})|(\d{1,2})\.(\d{1,2})\.(\d{4}))$/;
const DATE_TIME = /^(\S+?)(?:[T ]+)(\d{1,2}:\d{2}:\d{2}(?:[.,]\d+)?)(?:Z|[+-]\d{2}:?\d{2})?$/;

const DAY = 86_400;

/** A number as it is written in a table; undefined for anything else: nothing is guessed. */
export function parseNumber(text: string, decimal: DecimalSign): number | undefined {
  if (!NUMBERS[decimal].test(text)) return undefined;
  const plain = text.charCodeAt(0) === 0x2212 ? `-${text.slice(1)}` : text;
  const value = Number(decimal === ',' ? plain.replace(',', '.') : plain);
  return Number.isFinite(value) ? value : undefined;
}

/** Time of day, s; with a twelve-hour clock as its letters say. */
function parseClock(text: string): number | undefined {
  const [, hours, minutes, seconds, half] = CLOCK.exec(text) ?? [];
  if (hours === undefined || minutes === undefined || seconds === undefined) return undefined;
  const hour = half === undefined ? Number(hours) : (Number(hours) % 12) + (half.toLowerCase() === 'p' ? 12 : 0);
  const [m, s] = [Number(minutes), Number(seconds.replace(',', '.'))];
  return hour < 24 && m < 60 && s < 61 ? 3600 * hour + 60 * m + s : undefined;
}

/** A day, s since 1970. Days are read where the order of their parts is plain: year first, or with points. */
function parseDate(text: string): number | undefined {
  const [, y1, m1, d1, d2, m2, y2] = DATE.exec(text) ?? [];
  const [year, month, day] = [y1 ?? y2, m1 ?? m2, d1 ?? d2].map(Number);
  if (year === undefined || month === undefined || day === undefined || Number.isNaN(year)) return undefined;
  const time = Date.UTC(year, month - 1, day);
  return new Date(time).getUTCMonth() === month - 1 ? time / 1000 : undefined;
}

function parseDateTime(text: string): number | undefined {
  const [, day, clock] = DATE_TIME.exec(text) ?? [];
  if (day === undefined || clock === undefined) return undefined;
  const [date, time] = [parseDate(day), parseClock(clock)];
  return date === undefined || time === undefined ? undefined : date + time;
}

/** What a cell holds by its looks. */
export function formOf(text: string, decimal: DecimalSign): CellForm {
  if (parseNumber(text, decimal) !== undefined) return 'number';
  if (parseClock(text) !== undefined) return 'clock';
  if (parseDate(text) !== undefined) return 'date';
  return parseDateTime(text) === undefined ? 'text' : 'date-time';
}

/** The value of a cell that should be of a form: a number, or seconds. NaN where it is not. */
export function cellValue(text: string, form: CellForm, decimal: DecimalSign): number {
  switch (form) {
    case 'number':
      return parseNumber(text, decimal) ?? Number.NaN;
    case 'clock':
      return parseClock(text) ?? Number.NaN;
    case 'date':
      return parseDate(text) ?? Number.NaN;
    case 'date-time':
      return parseDateTime(text) ?? Number.NaN;
    default:
      return Number.NaN;
  }
}

/** Seconds of a day, for clocks that pass midnight. */
export const SECONDS_OF_DAY = DAY;

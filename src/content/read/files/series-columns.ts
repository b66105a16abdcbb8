import { nearest } from '../../schema/suggest.ts';
import { acceptedUnit, QUANTITIES } from '../../schema/units.ts';
import type { FileFault } from './file-kind.ts';
import type { TableColumn, TableHead } from './number-table.ts';

/** Where a table has its times. */
export type TimeColumn =
  /** Seconds for each unit of the column; `isAssumed` where no unit is said. */
  | { kind: 'elapsed'; column: number; factor: number; isAssumed: boolean }
  /** Time of day, or day and time; `date` where the day has a column of its own. */
  | { kind: 'clock'; column: number; date?: number }
  /** None: the session says how many rows a second there are. */
  | { kind: 'rate'; step: number };

/** Where a table has its readings. */
export interface ValueColumn {
  column: number;
  /** As the file or the session has it; empty where neither says. */
  unit: string;
}

const TIMES: Readonly<Record<string, number>> = {
  ...{
    ns: 1e-9,
    us: 1e-6,
    µs: 1e-6,
    μs: 1e-6,
    ms: 1e-3,
    msec: 1e-3,
    s: 1,
    sec: 1,
    secs: 1,
    second: 1,
    seconds: 1,
    sek: 1,
  },
  ...{ min: 60, mins: 60, minute: 60, minutes: 60, h: 3600, hr: 3600, hrs: 3600, hour: 3600, hours: 3600 },
};

const TIME_NAME = /^(?:time|elapsed|t$|zeit|temps|tiempo|tempo|duration|timestamp|x$)/i;
const COUNTER_NAME = /^(?:#|no\.?|nr\.?|n|index|idx|sample|samples|record|row|point|count)$/i;
const DAY_AND_TIME: ReadonlySet<string> = new Set(['clock', 'date-time']);

/** The column with the times of a table; a fault where none can be told. */
export function timeColumn({ columns }: TableHead, rate: number | undefined): TimeColumn | { fault: FileFault } {
  const clock = columns.findIndex((it) => DAY_AND_TIME.has(it.form));
  const elapsed = columns.findIndex(isElapsed);
  if (elapsed >= 0) {
    const { unit, name } = columns[elapsed] as TableColumn;
    const factor = unitFactor(unit) ?? unitFactor(lastWord(name));
    return { kind: 'elapsed', column: elapsed, factor: factor ?? 1, isAssumed: factor === undefined };
  }
  if (clock >= 0) {
    const date = columns.findIndex((it) => it.form === 'date');
    return { kind: 'clock', column: clock, ...(date >= 0 && { date }) };
  }
  if (rate !== undefined) return { kind: 'rate', step: 1 / rate };
  const numbers = columns.filter((it) => it.form === 'number');
  // Two columns without a head: the first is the times'.
  if (numbers.length === 2 && columns.every((it) => it.name === '')) {
    return { kind: 'elapsed', column: columns.indexOf(numbers[0] as TableColumn), factor: 1, isAssumed: true };
  }
  return {
    fault: {
      found: `${headWords(columns)}, of which none has times`,
      wanted: 'a column of times, or rate: with the readings a second in the session',
      hint: 'call it Time, with its unit in brackets: Time (s)',
    },
  };
}

function isElapsed({ name, unit, form }: TableColumn): boolean {
  return form === 'number' && (TIME_NAME.test(name) || unitFactor(unit) !== undefined);
}

const unitFactor = (unit: string): number | undefined => {
  const known = unit.trim().toLowerCase();
  return Object.hasOwn(TIMES, known) ? TIMES[known] : undefined;
};

const lastWord = (name: string) => name.split(/[\s_]+/).at(-1) ?? '';

/** The column with the readings; a fault where it can't be told which. */
export function valueColumn(
  { columns }: TableHead,
  time: TimeColumn,
  wanted: { column?: string | undefined; unit?: string | undefined },
): ValueColumn | { fault: FileFault } {
  const taken = time.kind === 'rate' ? [] : [time.column];
  const free = [...columns.keys()].filter((i) => columns[i]?.form === 'number' && !taken.includes(i));
  const at = (column: number) => ({ column, unit: wanted.unit ?? columns[column]?.unit ?? '' });
  if (wanted.column !== undefined) {
    const found = named(columns, wanted.column);
    if (found !== undefined && free.includes(found)) return at(found);
    return {
      fault: {
        found: headWords(columns),
        wanted: `a column of numbers called “${wanted.column}”, as the session says`,
        ...hintOf(
          nearest(
            wanted.column,
            columns.map((it) => it.name),
          ),
        ),
      },
    };
  }
  const readings = free.filter((i) => !COUNTER_NAME.test(columns[i]?.name ?? ''));
  const [only] = readings;
  if (only !== undefined && readings.length === 1) return at(only);
  const ofLight = readings.filter((i) => irradianceFactor(columns[i]?.unit ?? '') !== undefined);
  if (ofLight[0] !== undefined && ofLight.length === 1) return at(ofLight[0]);
  return {
    fault: {
      found: headWords(columns),
      wanted:
        readings.length === 0 ? 'a column of readings beside the times' : 'one column of readings, or to be told which',
      ...(readings.length > 0 && { hint: 'write column: with its heading or number in the session' }),
    },
  };
}

const hintOf = (near: string | undefined) => (near ? { hint: `did you mean “${near}”?` } : {});

function named(columns: readonly TableColumn[], wanted: string): number | undefined {
  const byName = columns.findIndex((it) => it.name.toLowerCase() === wanted.trim().toLowerCase());
  if (byName >= 0) return byName;
  const number = Number(wanted);
  return Number.isInteger(number) && number >= 1 && number <= columns.length ? number - 1 : undefined;
}

function headWords(columns: readonly TableColumn[]): string {
  if (columns.length === 1) return 'one column';
  const names = columns.map((it) => it.name).filter((it) => it !== '');
  return names.length === columns.length
    ? `columns ${names.map((it) => `“${it}”`).join(', ')}`
    : `${columns.length} columns`;
}

/** mW/cm² in a unit of irradiance; undefined for any other unit. */
export function irradianceFactor(unit: string): number | undefined {
  const { units } = QUANTITIES.irradiance;
  const known = acceptedUnit(unit, units);
  return Object.hasOwn(units, known) ? units[known]?.factor : undefined;
}

import type { TimeSeries } from '../../../measure/log/series.ts';
import type { Statement } from '../../../measure/statement.ts';
import type { BenchFile, FileFault, FileRead } from './file-kind.ts';
import { GrowingNumbers } from './growing-numbers.ts';
import { SECONDS_OF_DAY } from './number-cell.ts';
import { mostRows, readNumberTable, type TableHead } from './number-table.ts';
import { irradianceFactor, type TimeColumn, timeColumn, type ValueColumn, valueColumn } from './series-columns.ts';

declare module '../../../measure/statement.ts' {
  interface StatementData {
    /** Why times of a log were taken as they are. */
    'log-times-in-seconds': object;
    /** Several rows bear one time of a clock that shows whole seconds. */
    'log-times-spread': object;
    /** Readings were converted from a unit. */
    'log-unit': { unit: string };
    /** They have none that is of light. */
    'log-relative': { unit: string };
  }
}

/** A log as it is read. */
export interface SeriesFile {
  /** Times from the first row on, s. */
  series: TimeSeries;
  /** In mW/cm²; else in what the file has, from which ratios alone can be had. */
  isIrradiance: boolean;
  /** As the file has it. */
  unit: string;
}

/** What a session says of a log, of any kind. */
export interface SeriesEntry {
  column?: string | undefined;
  unit?: string | undefined;
  rate?: { value: number } | undefined;
}

/** What a kind of log asks of it. */
export interface SeriesNeeds {
  /** Rows, at least. */
  fewest: number;
  /** Readings have to be irradiance. */
  isOfLight: boolean;
  /** Lowest reading that can be, share of the highest; left out: any. */
  lowest?: number;
}

/** Reads a log of readings against time. */
export function readSeries({ path, bytes }: BenchFile, entry: SeriesEntry, needs: SeriesNeeds): FileRead<SeriesFile> {
  const taken = new SeriesTaker(entry, needs, mostRows(bytes));
  const read = readNumberTable(path, (head) => taken.begin(head));
  if ('fault' in read) return read;
  const unit = taken.unitOf(read.texts);
  if ('fault' in unit) return unit;
  const fault = taken.fault(read.rows);
  if (fault) return { fault };
  return taken.result(read.notes, unit.unit);
}

/** Takes rows one by one, and knows what is wrong with them. */
class SeriesTaker {
  private time: TimeColumn = { kind: 'rate', step: 1 };
  private value: ValueColumn = { column: 0, unit: '' };
  private readonly times: GrowingNumbers;
  private readonly values: GrowingNumbers;
  private first = 0;
  private count = 0;
  private before = Number.NEGATIVE_INFINITY;
  private days = 0;
  private isSpread = false;
  private highest = Number.NEGATIVE_INFINITY;
  private lowest = { value: Number.POSITIVE_INFINITY, line: 0 };
  private textColumns: number[] = [];
  private readonly entry: SeriesEntry;
  private readonly needs: SeriesNeeds;

  constructor(entry: SeriesEntry, needs: SeriesNeeds, most: number) {
    this.entry = entry;
    this.needs = needs;
    this.times = new GrowingNumbers(most);
    this.values = new GrowingNumbers(most);
  }

  begin(head: TableHead) {
    const time = timeColumn(head, this.entry.rate?.value);
    if ('fault' in time) return time;
    const value = valueColumn(head, time, this.entry);
    if ('fault' in value) return value;
    this.time = time;
    this.value = value;
    this.textColumns = [...head.columns.keys()].filter((i) => head.columns[i]?.form === 'text');
    const needed = [value.column, ...(time.kind === 'rate' ? [] : [time.column])];
    return {
      needed: time.kind === 'clock' && time.date !== undefined ? [...needed, time.date] : needed,
      take: (row: Float64Array, line: number) => this.take(row, line),
    };
  }

  private take(row: Float64Array, line: number): FileFault | undefined {
    const value = row[this.value.column] as number;
    const time = this.timeOf(row);
    const isClock = this.time.kind === 'clock';
    if (time < this.before || (time === this.before && !isClock)) {
      return {
        line,
        found: time === this.before ? 'the same time as in the row before' : 'an earlier time than in the row before',
        wanted: 'rows in the order of their times, each time once',
        hint: 'one file holds one run; sort it, or take out what was logged before',
      };
    }
    if (time === this.before) this.isSpread = true;
    if (this.count === 0) this.first = time;
    this.count++;
    this.before = time;
    this.times.push(time - this.first);
    this.values.push(value);
    this.highest = Math.max(this.highest, value);
    if (value < this.lowest.value) this.lowest = { value, line };
    return undefined;
  }

  private timeOf(row: Float64Array): number {
    const { time } = this;
    if (time.kind === 'rate') return this.count * time.step;
    const own = row[time.column] as number;
    if (time.kind === 'elapsed') return own * time.factor;
    if (time.date !== undefined) return (row[time.date] as number) + own;
    // A clock that passes midnight begins anew; one that goes back a little is out of order.
    if (own + this.days < this.before - SECONDS_OF_DAY / 2) this.days += SECONDS_OF_DAY;
    return own + this.days;
  }

  /** The unit: as the session or the head says it, or as every row does. */
  unitOf(texts: ReadonlyArray<readonly string[]>): { unit: string } | { fault: FileFault } {
    if (this.value.unit !== '') return { unit: this.value.unit };
    const units = this.textColumns.map((i) => texts[i] ?? []).filter((all) => all.some((it) => isUnit(it)));
    const [all = []] = units;
    if (all.length < 2) return { unit: all[0] ?? '' };
    return {
      fault: {
        found: `rows in ${all.map((it) => `“${it}”`).join(' and ')}`,
        wanted: 'one unit in the whole file',
        hint: 'switch the meter’s automatic range to one unit, or convert the rows',
      },
    };
  }

  fault(rows: number): FileFault | undefined {
    const { fewest, lowest } = this.needs;
    if (rows < fewest) {
      return {
        found: rows === 1 ? 'one row of readings' : `${rows} rows of readings`,
        wanted: `${fewest} at least`,
        hint: 'is the file whole?',
      };
    }
    if (lowest !== undefined && this.lowest.value < lowest * Math.max(0, this.highest)) {
      return {
        line: this.lowest.line,
        found: `a reading of ${this.lowest.value}`,
        wanted: 'light, which is not negative',
        hint: 'zero the meter with its cap on, or take the dark reading off',
      };
    }
    return undefined;
  }

  result(notes: readonly Statement[], unit: string): FileRead<SeriesFile> {
    const factor = irradianceFactor(unit);
    if (this.needs.isOfLight && factor === undefined) {
      return {
        fault: {
          found: unit === '' ? 'readings without a unit' : `readings in “${unit}”`,
          wanted: 'a unit of irradiance: mW/cm2, W/m2 or uW/cm2',
          hint: 'put it into the heading in brackets, or write unit: in the session',
        },
      };
    }
    const values = this.values.done();
    const times = this.times.done();
    if (this.isSpread) spread(times);
    if (factor !== undefined && factor !== 1)
      for (let i = 0; i < values.length; i++) values[i] = (values[i] as number) * factor;
    const told: Statement[] = [...notes];
    if (this.time.kind === 'elapsed' && this.time.isAssumed) told.push({ code: 'log-times-in-seconds' });
    if (this.isSpread) told.push({ code: 'log-times-spread' });
    if (factor !== undefined && factor !== 1) told.push({ code: 'log-unit', unit });
    if (factor === undefined) told.push({ code: 'log-relative', unit });
    return { data: { series: { times, values }, isIrradiance: factor !== undefined, unit }, notes: told };
  }
}

const isUnit = (text: string) => irradianceFactor(text) !== undefined || /^(?:[mµu]?V|%|counts|a\.?u\.?)$/i.test(text);

/** Spreads rows that bear one time evenly over the time to the next; the last ones over the step before. */
function spread(times: Float64Array): void {
  let step = 1;
  for (let from = 0; from < times.length; ) {
    const time = times[from] as number;
    let to = from;
    while (to < times.length && times[to] === time) to++;
    if (to < times.length) step = (times[to] as number) - time;
    for (let i = from; i < to; i++) times[i] = time + ((i - from) * step) / (to - from);
    from = to;
  }
}

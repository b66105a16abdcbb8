import type { RawReading } from './raw-readings.ts';

/** A cell of a table of readings: what was read there, rejected readings too. */
export type ReadingCell = readonly RawReading[];

/** Rows of readings under heads. */
export interface ReadingTable {
  caption: string;
  heads: readonly string[];
  rows: Array<{ label: string; cells: ReadingCell[] }>;
}

/** A session's readings as tables; each stands in one of them, but for those past the edges, which have their own. */
export interface ReadingTables {
  /** The grid by its places, and the one unit of its readings where they have one. */
  grid: { rows: ReadingCell[][]; unit: string } | undefined;
  tables: ReadingTable[];
  singles: RawReading[];
}

const MODES = ['red', 'nearInfrared', 'combined'] as const;
const ON_AND_OFF = ['off', 'on', 'distance', 'frequency'] as const;
const SWEEP = ['centre', 'red', 'nearInfrared'] as const;

const IN_MODE = new RegExp(String.raw`^(?<before>\w+)\.(?<column>${MODES.join('|')})(?:\.(?<after>\w+))?$`);
const SURROUNDINGS = new RegExp(
  String.raw`^(?<before>magnetic|electric|radio|sound)\.(?<column>${ON_AND_OFF.join('|')})$`,
);
const SWEPT = /^distances\[(?<row>\d+)\]\.(?<column>\w+)(?:\[\d+\])?$/;
const GRID = /^grid\.rows\[(?<row>\d+)\]\[(?<column>\d+)\]/;

/** Sorts a session's readings into tables. */
export function readingTables(readings: readonly RawReading[]): ReadingTables {
  const modes = new Map<string, ReadingCell[]>();
  const surroundings = new Map<string, ReadingCell[]>();
  const sweep = new Map<string, ReadingCell[]>();
  const grid: RawReading[][][] = [];
  const singles: RawReading[] = [];
  for (const it of readings) {
    const inMode = IN_MODE.exec(it.path)?.groups;
    const around = SURROUNDINGS.exec(it.path)?.groups;
    const swept = SWEPT.exec(it.path)?.groups;
    const point = GRID.exec(it.path)?.groups;
    if (inMode) put(modes, modeLabel(it), MODES, inMode.column, it);
    else if (around) put(surroundings, around.before ?? '', ON_AND_OFF, around.column, it);
    else if (swept?.column === 'distance') sweep.set(it.written, []);
    else if (swept) put(sweep, [...sweep.keys()].at(-1) ?? '', SWEEP, swept.column, it);
    else if (point) placeIn(grid, Number(point.row), Number(point.column), it);
    else if (!it.path.startsWith('beyond[') && it.path !== 'notes') singles.push(it);
  }
  const table = (caption: string, heads: readonly string[], rows: Map<string, ReadingCell[]>): ReadingTable => ({
    caption,
    heads,
    rows: [...rows].map(([label, cells]) => ({ label, cells: heads.map((_, i) => cells[i] ?? []) })),
  });
  return {
    grid: grid.length > 0 ? { rows: grid, unit: oneUnit(grid.flat(2)) } : undefined,
    tables: [
      table('By channel', ['red', 'near-infrared', 'both'], modes),
      table('Fields and sound', ['off', 'on', 'distance', 'frequency'], surroundings),
      table('Sweep before the middle', ['both', 'red', 'near-infrared'], sweep),
    ]
      .filter((it) => it.rows.length > 0)
      .map(withoutEmptyColumns),
    singles,
  };
}

/** The label without the channel, which its column says. */
const modeLabel = (it: RawReading) =>
  it.label
    .split(', ')
    .filter((part) => !['red', 'near-infrared', 'combined'].includes(part))
    .join(', ');

function put(
  rows: Map<string, ReadingCell[]>,
  label: string,
  columns: readonly string[],
  column: string | undefined,
  it: RawReading,
): void {
  const cells = rows.get(label) ?? [];
  const i = columns.indexOf(column ?? '');
  cells[i] = [...(cells[i] ?? []), it];
  rows.set(label, cells);
}

function placeIn(grid: RawReading[][][], row: number, column: number, it: RawReading): void {
  const cells = grid[row] ?? [];
  cells[column] = [...(cells[column] ?? []), it];
  grid[row] = cells;
}

/** The unit that all of some readings were written in; empty where they differ. */
function oneUnit(readings: readonly RawReading[]): string {
  const units = new Set(readings.map((it) => it.written.replace(/^[\d.<>\s-]+/, '')));
  return units.size === 1 ? ([...units][0] ?? '') : '';
}

function withoutEmptyColumns(table: ReadingTable): ReadingTable {
  const isUsed = table.heads.map((_, i) => table.rows.some(({ cells }) => (cells[i]?.length ?? 0) > 0));
  return {
    ...table,
    heads: table.heads.filter((_, i) => isUsed[i]),
    rows: table.rows.map((row) => ({ ...row, cells: row.cells.filter((_, i) => isUsed[i]) })),
  };
}

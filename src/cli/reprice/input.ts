import { isUtf8 } from 'node:buffer';
import { existsSync, readFileSync, statSync } from 'node:fs';
import { UsageError } from '../../content/read/usage-error.ts';
import type { Problem } from '../../content/schema/problem.ts';
import { COLUMNS, type Column, type PriceRow } from './price-row.ts';
import { readCells } from './read-cells.ts';
import { type RowContext, readRow } from './read-rows.ts';

/** What was given on the command line for prices; empty where nothing was. */
export interface PriceFlags {
  list?: string;
  paid?: string;
  date?: string;
  currency?: string;
  code?: string;
  link?: string;
  paidLink?: string;
  note?: string;
  confirm?: boolean;
}

/** Prices that were read, or all that is wrong with them. */
export interface PriceInput {
  rows: PriceRow[];
  problems: Problem[];
}

const COMMAND_LINE = 'the command line';
const flagOf = (column: Column) => `--${column.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;

/** True where the first argument means a file of prices, and not a panel. */
export function isFile(argument: string): boolean {
  return argument === '-' || /[./\\]/.test(argument) || (existsSync(argument) && statSync(argument).isFile());
}

/**
 * Prices from a file, or from the standard input for `-`.
 *
 * @throws UsageError where it can't be read
 */
export function fileInput(argument: string, context: Omit<RowContext, 'fieldName'>): PriceInput {
  const file = argument === '-' ? 'standard input' : argument;
  const { rows: cells, problems } = readCells(textOf(argument, file), file);
  const read = cells.map((it) =>
    readRow(it.cells, { file, line: it.line }, { ...context, fieldName: (column) => column }),
  );
  const rows = read.flatMap(({ row }) => row ?? []);
  if (cells.length === 0 && problems.length === 0) {
    problems.push({ file, field: '', found: 'no row below the first line', wanted: 'a row for each price' });
  }
  const all = [...problems, ...read.flatMap((it) => it.problems), ...twice(rows, file)];
  return { rows, problems: all.toSorted((a, b) => (a.line ?? 0) - (b.line ?? 0)) };
}

/** Prices from the command line: one panel with its amounts, or several that are confirmed. */
export function flagInput(
  panels: readonly string[],
  flags: PriceFlags,
  context: Omit<RowContext, 'fieldName'>,
): PriceInput {
  const { confirm = false, ...said } = flags;
  if (!confirm && said.list === undefined && said.paid === undefined) {
    throw new UsageError('What does it cost now? Give --paid, --list or both, or --confirm where nothing has changed.');
  }
  if (confirm && (said.list !== undefined || said.paid !== undefined)) {
    throw new UsageError(
      '--confirm says that the amounts are as before; with --list or --paid they are given anew. Take one of the two.',
    );
  }
  if (!confirm && panels.length > 1) {
    throw new UsageError('Amounts on the command line are of one panel. For several, write a file: see --template.');
  }
  const read = panels.map((panel) => {
    const cells: Partial<Record<Column, string>> = { panel };
    for (const column of COLUMNS) {
      if (column !== 'panel' && said[column] !== undefined) cells[column] = said[column];
    }
    return readRow(
      cells,
      { file: COMMAND_LINE },
      { ...context, fieldName: (column) => (column === 'panel' ? '' : flagOf(column)) },
    );
  });
  const places = panels.length > 1;
  return {
    rows: read.flatMap(({ row }) =>
      row ? [{ ...row, place: places ? row.panel : row.place, isConfirmed: confirm }] : [],
    ),
    problems: read.flatMap((it) => it.problems),
  };
}

function textOf(argument: string, file: string): string {
  let bytes: Buffer;
  try {
    bytes = readFileSync(argument === '-' ? 0 : argument);
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : error;
    const why = code === 'ENOENT' ? 'there is no such file' : code === 'EISDIR' ? 'it is a folder' : code;
    throw new UsageError(`${file} can't be read: ${why}. Nothing was changed.`);
  }
  if (!isUtf8(bytes)) {
    throw new UsageError(`${file} is not in UTF-8; save it again as CSV in that encoding. Nothing was changed.`);
  }
  return bytes.toString('utf8');
}

/** Of two rows for a panel and a day, nobody can say which counts. */
function twice(rows: readonly PriceRow[], file: string): Problem[] {
  const keyOf = ({ panel, date }: PriceRow) => `${panel.toLowerCase()} ${date}`;
  return rows.flatMap((row, i) => {
    const first = rows.find((it) => keyOf(it) === keyOf(row));
    if (!first || rows.indexOf(first) === i) return [];
    const line = Number(row.place.split(':').at(-1));
    return [
      {
        file,
        line,
        field: 'panel',
        found: `"${row.panel}" on ${row.date} once more`,
        wanted: `one row for a panel and a day; ${first.place} is one`,
      },
    ];
  });
}

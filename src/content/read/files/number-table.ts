import { statSync } from 'node:fs';
import type { Statement } from '../../../measure/statement.ts';
import type { FileFault } from './file-kind.ts';
import { type CellForm, cellValue, type DecimalSign } from './number-cell.ts';
import { cellsOf, isComment, type Separator, type TableForm, tableForm } from './table-form.ts';
import { type Encoding, eachLine, encodingOf, headLines, headOf } from './text-lines.ts';

declare module '../../../measure/statement.ts' {
  interface StatementData {
    /** What was converted while a table was read. */
    'table-decimal-commas': object;
    'table-encoding': { encoding: Encoding };
    /** Lines behind the last row that hold no numbers. */
    'table-foot-left-out': { lines: number };
  }
}

/** A line before the first row. */
export interface HeaderLine {
  /** From 1. */
  line: number;
  text: string;
  cells: readonly string[];
}

export interface TableColumn {
  /** As the head has it, without the unit; empty where there is no head. */
  name: string;
  /** As the head has it; empty where it has none. */
  unit: string;
  form: CellForm;
  /** The cell of the first row. */
  first: string;
}

/** A table of numbers as far as its start tells. */
export interface TableHead {
  header: readonly HeaderLine[];
  columns: readonly TableColumn[];
  separator: Separator;
  decimal: DecimalSign;
  encoding: Encoding;
  /** Line of the first row, from 1. */
  firstLine: number;
  /** Rows that the looked-at start holds: all of a short file's. */
  rowsSeen: number;
}

/** What takes the rows of a table. */
export interface RowTaker {
  /** Columns in which a row has to have a number; what others hold may be NaN. */
  needed: readonly number[];
  /**
   * @param values a row's numbers, times in seconds; the same array each time
   * @returns a fault, which ends the reading
   */
  take(values: Float64Array, line: number): FileFault | undefined;
}

export type TableRead =
  | { head: TableHead; rows: number; texts: ReadonlyArray<readonly string[]>; notes: Statement[] }
  | { fault: FileFault };

/** Different texts of a column that are kept: units and states, not remarks. */
const MOST_TEXTS = 20;

/** The start of a table; a fault where it is none. */
export function tableHead(head: Uint8Array, isWhole: boolean): TableHead | { fault: FileFault } {
  if (head.length === 0) return { fault: EMPTY };
  const encoding = encodingOf(head);
  if (!encoding) return { fault: binaryFault(head) };
  const lines = headLines(head, encoding, isWhole);
  if (lines.every((it) => it.trim() === '')) return { fault: EMPTY };
  const form = tableForm(lines);
  if (form === 'ambiguous') {
    return {
      fault: {
        found: 'commas of which it can’t be told whether they part numbers or stand within them',
        wanted: 'numbers parted by semicolons or tabs, or decimal points',
        hint: 'export it with semicolons, or with a decimal point',
      },
    };
  }
  if (!form) {
    const found = isWhole ? 'no row of numbers' : 'no row of numbers in the first 64 KB';
    return {
      fault: { found, wanted: 'a table with a row of numbers to a line', hint: 'is it the file with readings?' },
    };
  }
  if (form.odd !== undefined) {
    const line = form.odd + 1;
    const cells = (i: number) => cellsOf(lines[i] ?? '', form.separator).length;
    return {
      fault: { line, found: `${cells(form.odd)} numbers`, wanted: `${cells(form.first)}, as in the rows that follow` },
    };
  }
  return headFrom(lines, form, encoding);
}

const EMPTY: FileFault = { found: 'an empty file', wanted: 'a table of numbers', hint: 'copy it anew from the meter' };

function binaryFault(head: Uint8Array): FileFault {
  const start = Buffer.from(head.subarray(0, 4)).toString('latin1');
  const isBook = start.startsWith('PK') || start === '\xd0\xcf\x11\xe0';
  return {
    found: isBook ? 'a workbook or archive, whatever its name says' : 'bytes that are no text',
    wanted: 'a text file with a table of numbers',
    hint: isBook ? 'save it as CSV in the program that opens it' : 'export it as CSV from the meter’s program',
  };
}

function headFrom(lines: readonly string[], form: TableForm, encoding: Encoding): TableHead {
  const { separator, decimal, columns, first } = form;
  const header = lines.slice(0, first).flatMap((text, i): HeaderLine[] => {
    if (text.trim() === '') return [];
    return [{ line: i + 1, text: text.trim(), cells: cellsOf(text.replace(/^\s*(?:#|%|\/\/|!)\s*/, ''), separator) }];
  });
  const named = header.filter(({ cells }) => cells.length === columns.length);
  const [names, units] = namesAndUnits(named.map((it) => it.cells));
  const cells = cellsOf(lines[first] ?? '', separator);
  return {
    header,
    columns: columns.map((it, i) => ({
      ...nameAndUnit(names[i] ?? '', units[i]),
      form: it,
      first: cells[i] ?? '',
    })),
    separator,
    decimal,
    encoding,
    firstLine: first + 1,
    rowsSeen: lines.slice(first).filter((line) => cellsOf(line, separator).length === columns.length).length,
  };
}

/** The last line of the head with a cell for each column has the names; or the units, with the names above. */
function namesAndUnits(lines: ReadonlyArray<readonly string[]>): [readonly string[], readonly string[]] {
  const last = lines.at(-1) ?? [];
  const above = lines.at(-2);
  const isUnits = above !== undefined && last.every((it) => it.length <= 14 && !/\s\S+\s/.test(it)) && hasUnit(last);
  return isUnits ? [above, last] : [last, []];
}

const hasUnit = (cells: readonly string[]) =>
  cells.some((it) => /^[[(]?(?:n?m|[uµμ]m|s|ms|min|h|V|mV|%|[mcukµμ]?W\/.*|a\.?u\.?|counts)[\])]?$/i.test(it));

/** `Wavelength [nm]`, `Wavelength (nm)`, `Wavelength / nm`, `Wavelength in nm`: a name and its unit. */
export function nameAndUnit(text: string, unit = ''): { name: string; unit: string } {
  const bare = (it: string) => it.replace(/^[[(](.*)[\])]$/, '$1').trim();
  if (unit !== '') return { name: text.trim(), unit: bare(unit) };
  const [, name, own] = /^(.*?)\s*(?:\[(.+)\]|\((.+)\))\s*$/.exec(text)?.filter((it) => it !== undefined) ?? [];
  if (name !== undefined && own !== undefined) return { name: name.trim(), unit: own.trim() };
  const [, before, behind] = /^(.+?)(?:\s+\/\s+|\s+in\s+)(\S+)$/.exec(text) ?? [];
  return before === undefined ? { name: text.trim(), unit: '' } : { name: before.trim(), unit: (behind ?? '').trim() };
}

/**
 * Reads a text table of numbers row by row, so that a log of a hundred megabytes is never in memory: separator, decimal
 * sign, head and letters are told from its start. A row that lacks a needed number is a fault with its line; lines of
 * words behind the last row are left out, and that is told.
 *
 * @param begin is given the head, and says what takes the rows
 */
export function readNumberTable(path: string, begin: (head: TableHead) => RowTaker | { fault: FileFault }): TableRead {
  const start = headOf(path);
  const head = tableHead(start, start.length === statSync(path).size);
  if ('fault' in head) return head;
  const taker = begin(head);
  if ('fault' in taker) return taker;
  const { columns, separator, decimal, firstLine } = head;
  const values = new Float64Array(columns.length);
  const texts = columns.map(() => new Set<string>());
  let rows = 0;
  let foot: { line: number; text: string; lines: number } | undefined;

  const fault = eachLine(path, head.encoding, (text, line) => {
    if (line < firstLine || text.trim() === '' || isComment(text)) return undefined;
    const cells = cellsOf(text, separator);
    let numbers = 0;
    for (let i = 0; i < columns.length; i++) {
      const form = (columns[i] as TableColumn).form;
      const cell = cells[i] ?? '';
      const value = cellValue(cell, form, decimal);
      values[i] = value;
      if (!Number.isNaN(value)) numbers++;
      else if (form === 'text' && (texts[i]?.size ?? 0) < MOST_TEXTS) texts[i]?.add(cell);
    }
    if (numbers === 0 && !isBroken(cells, head, taker)) {
      foot ??= { line, text, lines: 0 };
      foot.lines++;
      return undefined;
    }
    if (foot) {
      const hint = 'one file holds one run: take out what is between the rows, or make two files of it';
      return { line: foot.line, found: quoted(foot.text), wanted: 'rows of numbers without a break', hint };
    }
    const missing = rowFault(cells, values, head, taker);
    if (missing) return { line, ...missing };
    rows++;
    return taker.take(values, line);
  });
  if (fault) return { fault };
  const notes: Statement[] = [];
  if (decimal === ',') notes.push({ code: 'table-decimal-commas' });
  if (head.encoding !== 'utf-8') notes.push({ code: 'table-encoding', encoding: head.encoding });
  if (foot) notes.push({ code: 'table-foot-left-out', lines: foot.lines });
  return { head, rows, texts: texts.map((it) => [...it]), notes };
}

/** Rows that a table of so many bytes can have: each has a digit and an end, but for the last one. */
export const mostRows = (bytes: number) => Math.ceil((bytes + 1) / 2);

/** A line without a number that stands for a row all the same: `NaN;NaN`, `--;--`, or one of a lost cell. */
function isBroken(cells: readonly string[], { columns }: TableHead, { needed }: RowTaker): boolean {
  return (
    cells.length === columns.length &&
    needed.every((i) => /^(?:|nan|inf.*|ol|over|-+|n\/?a|null)$/i.test(cells[i] ?? ''))
  );
}

function rowFault(
  cells: readonly string[],
  values: Float64Array,
  { columns, decimal }: TableHead,
  { needed }: RowTaker,
): Omit<FileFault, 'line'> | undefined {
  for (const i of needed) {
    if (!Number.isNaN(values[i])) continue;
    const cell = cells[i] ?? '';
    const form = columns[i]?.form;
    const other = decimal === '.' ? ',' : '.';
    return {
      found: cell === '' ? `a row without a value in column ${i + 1}` : `${quoted(cell)} in column ${i + 1}`,
      wanted:
        form === 'number' || form === 'text'
          ? 'a number'
          : `a ${form === 'clock' ? 'time' : 'day and time'} like those of the rows before`,
      ...(form === 'number' && cell.includes(other)
        ? { hint: `the rows before have a decimal ${decimal === '.' ? 'point' : 'comma'}` }
        : { hint: 'what the meter could not read is no number: take such rows out, and say so in the notes' }),
    };
  }
  if (cells.length > columns.length) {
    return { found: `${cells.length} cells`, wanted: `${columns.length}, as in the rows before` };
  }
  return undefined;
}

const quoted = (text: string) => `“${text.trim().replace(/\s+/g, ' ').slice(0, 60)}”`;

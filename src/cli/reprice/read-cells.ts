import { dsvFormat } from 'd3-dsv';
import type { Problem } from '../../content/schema/problem.ts';
import { nearest } from '../../content/schema/suggest.ts';
import { COLUMNS, type Column } from './price-row.ts';

/** One row of a file as it was typed, by column; what the file has no column for is undefined. */
export interface CellRow {
  /** From 1. */
  line: number;
  cells: Partial<Record<Column, string>>;
}

/** Signs between the fields of a row, as programs write them. */
export const SEPARATORS = { comma: ',', semicolon: ';', tab: '\t' } as const;

/**
 * Takes a file of prices apart: columns in any order, separated by commas, semicolons or tabs, whichever its first line
 * is divided by.
 *
 * @param file how messages name it
 */
export function readCells(text: string, file: string): { rows: CellRow[]; problems: Problem[] } {
  const clean = text.replace(/^\ufeff/, '').replace(/\r\n?/g, '\n');
  // What npm says of the command that it runs, where a file was written without --silent.
  const banner = /^(?:\s*\n|> [^\n]*\n)*/.exec(clean)?.[0] ?? '';
  const linesBefore = banner.split('\n').length - 1;
  const table = clean.slice(banner.length);
  const header = table.split('\n', 1)[0] ?? '';
  const separator = Object.values(SEPARATORS).toSorted((a, b) => header.split(b).length - header.split(a).length)[0];
  const parsed = dsvFormat(separator ?? ',').parseRows(table);
  let line = linesBefore + 1;
  const placed = parsed.map((values) => {
    const own = line;
    // A field in quotes may go over several lines.
    line += 1 + values.reduce((sum, it) => sum + it.split('\n').length - 1, 0);
    return { line: own, values: values.map((it) => it.trim()) };
  });
  const [first, ...rest] = placed;
  if (!first || header.trim() === '') {
    const problem = {
      file,
      field: '',
      found: 'nothing',
      wanted: `a first line with the columns: ${COLUMNS.join(', ')}`,
    };
    return { rows: [], problems: [problem] };
  }
  const names = first.values.map((it) => COLUMNS.find((name) => name.toLowerCase() === it.toLowerCase()));
  const problems = headerProblems(first, names, file);
  if (problems.length > 0) return { rows: [], problems };
  const unclosed = unclosedQuote(table, placed, file);
  if (unclosed) return { rows: [], problems: [unclosed] };
  const rows = rest.filter(({ values }) => values.some((it) => it !== ''));
  const tooLong = rows.filter(({ values }) => values.slice(names.length).some((it) => it !== ''));
  return {
    rows: rows
      .filter((it) => !tooLong.includes(it))
      .map((it) => ({
        line: it.line,
        cells: Object.fromEntries(names.flatMap((name, i) => (name ? [[name, it.values[i] ?? '']] : []))),
      })),
    problems: tooLong.map((it) => ({
      file,
      line: it.line,
      field: '',
      found: `${it.values.length} fields`,
      wanted: `${names.length} fields, as the first line has`,
      hint:
        separator === ','
          ? 'a price or a note with a comma in it needs quotes: "849,50"'
          : `a field with the sign ${separator} in it needs quotes`,
    })),
  };
}

function headerProblems(
  { line, values }: { line: number; values: string[] },
  names: ReadonlyArray<Column | undefined>,
  file: string,
): Problem[] {
  const at = { file, line, field: '' };
  const wanted = `columns of these names: ${COLUMNS.join(', ')}`;
  const unknown = values.flatMap((found, i) => {
    if (names[i] || found === '') return [];
    const near = nearest(found, COLUMNS);
    return [
      { ...at, found: `a column "${found.slice(0, 40)}"`, wanted, hint: near ? `did you mean "${near}"?` : undefined },
    ];
  });
  const twice = names.filter((it, i) => it && names.indexOf(it) !== i);
  const missing = [
    ...(names.includes('panel') ? [] : ['a column "panel"']),
    ...(names.includes('paid') || names.includes('list') ? [] : ['a column "paid", a column "list", or both']),
  ];
  return [
    ...unknown,
    ...twice.map((it) => ({ ...at, found: `two columns "${it}"`, wanted: 'one column of each name' })),
    // A misspelt name is said once.
    ...(unknown.length > 0
      ? []
      : missing.map((it) => ({ ...at, found: `no such column in "${values.join(', ').slice(0, 60)}"`, wanted: it }))),
  ];
}

/** A quote that is never closed swallows all the lines that follow it. */
function unclosedQuote(table: string, placed: ReadonlyArray<{ line: number }>, file: string): Problem | undefined {
  if (table.split('"').length % 2 === 1) return undefined;
  return {
    file,
    line: placed.at(-1)?.line,
    field: '',
    found: 'a quotation mark that is not closed, here or above',
    wanted: 'quotes around whole fields, and two in a row for one inside: "a 12"" panel"',
  };
}

import stringWidth from 'string-width';
import type { Row, Section } from '../../site/shared/told.ts';
import { COLUMNS, wrapped as hanging } from '../ask/wrap.ts';

/** A text in lines of at most 80 columns, all with the same indent. */
export const wrapped = (text: string, indent = 0) => hanging(text, indent, 0);

/** Sections as plain text: headings, and rows with their names in a column. */
export function sectionText(sections: readonly Section[]): string {
  return sections
    .map(({ title, lead, rows }) =>
      [wrapped(title), ...(lead === undefined ? [] : [wrapped(lead, 2)]), rowsText(rows)].join('\n'),
    )
    .join('\n\n');
}

/** Rows as plain text: where name and text fit into a line they share it, and otherwise the text stands below. */
export function rowsText(rows: readonly Row[]): string {
  const column = nameColumn(rows);
  return rows
    .map((row) => {
      const { name, text, todo } = row;
      if (todo !== undefined) return [wrapped(name, 2), wrapped(text, 4), wrapped(`→ ${todo}`, 4)].join('\n');
      if (name === '' || text === '') return wrapped(name || text, 2);
      if (fits(row, column)) return `  ${name}${' '.repeat(column - stringWidth(name) + GAP)}${text}`;
      return `${wrapped(name, 2)}\n${wrapped(text, 4)}`;
    })
    .join('\n');
}

/** Columns before a row, and between a name and its text. */
const GAP = 2;

/** The narrowest column of names with which the most rows are one line each. */
function nameColumn(rows: readonly Row[]): number {
  const counts = [...new Set(rows.map((it) => stringWidth(it.name)))]
    .toSorted((a, b) => a - b)
    .map((column) => ({ column, count: rows.filter((it) => fits(it, column)).length }));
  return counts.reduce((best, it) => (it.count > best.count ? it : best), { column: 0, count: 0 }).column;
}

function fits({ name, text, todo }: Row, column: number): boolean {
  if (name === '' || text === '' || todo !== undefined) return false;
  return stringWidth(name) <= column && stringWidth(text) <= COLUMNS - 2 * GAP - column;
}

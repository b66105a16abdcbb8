import { Help } from 'commander';
import stringWidth from 'string-width';
import type { Row, Section } from '../../site/shared/told.ts';

/** Columns that prose and tables of commands fit into. */
export const COLUMNS = 80;

/** Columns that names may take before their texts move to lines of their own. */
const MOST_NAME = 34;

const lines = new Help();

/**
 * A text in lines of at most 80 columns.
 *
 * @param indent spaces before each
 */
export function wrapped(text: string, indent = 0): string {
  return lines
    .boxWrap(text, COLUMNS - indent)
    .split('\n')
    .map((it) => `${' '.repeat(indent)}${it}`.trimEnd())
    .join('\n');
}

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
  const widths = rows.filter((it) => it.text !== '').map((it) => stringWidth(it.name));
  const column = Math.min(MOST_NAME, Math.max(0, ...widths));
  return rows
    .map(({ name, text, todo }) => {
      if (todo !== undefined) return [wrapped(name, 2), wrapped(text, 4), wrapped(`→ ${todo}`, 4)].join('\n');
      if (name === '' || text === '') return wrapped(name || text, 2);
      const room = COLUMNS - 2 - column - 2;
      const fits = stringWidth(name) <= column && stringWidth(text) <= room;
      if (fits) return `  ${name}${' '.repeat(column - stringWidth(name) + 2)}${text}`;
      return `${wrapped(name, 2)}\n${wrapped(text, 4)}`;
    })
    .join('\n');
}

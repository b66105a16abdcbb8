import { Help } from 'commander';

/** Columns that prose of commands fits into. */
const COLUMNS = 80;

const lines = new Help();

/**
 * A text in lines of at most 80 columns.
 *
 * @param indent spaces before the first line, and two more before the others
 */
export function wrapped(text: string, indent = 0): string {
  return lines
    .boxWrap(text, COLUMNS - indent - 2)
    .split('\n')
    .map((it, i) => `${' '.repeat(i === 0 ? indent : indent + 2)}${it}`.trimEnd())
    .join('\n');
}

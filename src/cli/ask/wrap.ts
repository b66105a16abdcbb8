import { Help } from 'commander';

/** Columns that prose of commands fits into. */
const COLUMNS = 80;

const lines = new Help();

/**
 * A text in lines of at most 80 columns.
 *
 * @param indent spaces before the first line
 * @param hang spaces more before the others
 */
export function wrapped(text: string, indent = 0, hang = indent > 0 ? 2 : 0): string {
  return lines
    .boxWrap(text, COLUMNS - indent - hang)
    .split('\n')
    .map((it, i) => `${' '.repeat(i === 0 ? indent : indent + hang)}${it}`.trimEnd())
    .join('\n');
}

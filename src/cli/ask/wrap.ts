import { Help } from 'commander';

/** Columns that prose and tables of commands fit into. */
export const COLUMNS = 80;

const lines = new Help();

/**
 * A text in lines of at most 80 columns.
 *
 * @param indent spaces before the first line
 * @param hang how many more the others have; two, where there is an indent
 */
export function wrapped(text: string, indent = 0, hang = indent > 0 ? 2 : 0): string {
  return lines
    .boxWrap(text, COLUMNS - indent - hang)
    .split('\n')
    .map((it, i) => `${' '.repeat(i === 0 ? indent : indent + hang)}${it}`.trimEnd())
    .join('\n');
}

/** A name in a column, and beside it what it means, in lines of at most 80 columns. */
export function defined(name: string, meaning: string, { indent = 0, width = name.length + 2 } = {}): string {
  const [first = '', ...rest] = lines.boxWrap(meaning, COLUMNS - indent - width).split('\n');
  const margin = ' '.repeat(indent);
  return [`${margin}${name.padEnd(width)}${first}`, ...rest.map((it) => `${margin}${' '.repeat(width)}${it}`)]
    .map((it) => it.trimEnd())
    .join('\n');
}

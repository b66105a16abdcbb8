import { fieldPath, type Problem } from '../schema/problem.ts';
import { fields } from './fields.ts';
import type { Source } from './source.ts';

/**
 * Decimal commas among the numbers of a list. `[41,2, 40,1]` is four numbers to YAML, all of them plausible, so that
 * nothing but the way they are written tells: a comma without a space inside a number, one with a space between two.
 */
export function decimalCommas(panels: Iterable<Source>): Problem[] {
  return [...panels].flatMap((source) => {
    const lines = source.yaml.split('\n');
    const suspects = new Map<number, string>();
    lines.forEach((line, i) => {
      const number = commaIn(line);
      if (number !== undefined) suspects.set(i + source.yamlLine, number);
    });
    const rows = gridRows(source.data);
    const paired = rows.filter(({ row }) => isPaired(row));
    // Nearly every file; the lines of its rows need not be looked for.
    if (suspects.size === 0 && paired.length === 0) return [];
    const places = new Map(rows.map(({ path }) => [source.lineOf(path), path] as const));
    // Without spaces anywhere the numbers themselves have to tell.
    for (const { path, row } of paired) {
      const line = source.lineOf(path);
      if (!suspects.has(line)) suspects.set(line, `${row[0]},${row[1]}`);
    }
    return [...suspects]
      .toSorted(([a], [b]) => a - b)
      .map(([line, number]) => ({
        file: source.file,
        line,
        field: fieldPath(places.get(line) ?? []),
        found: `"${number}"`,
        wanted: 'decimals after a point; in a list a comma ends a number',
        hint: `write ${number.replace(',', '.')}, or a space after the comma if these are two numbers`,
      }));
  });
}

/** The first number of a list in this line that has a comma inside, where other commas have a space after them. */
function commaIn(line: string): string | undefined {
  const bare = line.replace(/"[^"]*"|'[^']*'/g, '""').replace(/\s#.*$/, '');
  const list = bare.slice(Math.max(0, bare.indexOf('[')));
  if (!bare.includes('[') || !/, +[\d[{]/.test(list)) return undefined;
  return /(?<![\d.,])\d+,\d+(?![\d.])/.exec(list)?.[0];
}

/** Whole numbers in pairs of one of two digits or more and one of a single digit: 41,2,40,1,39,9. */
function isPaired(row: readonly unknown[]): boolean {
  return (
    row.length >= 4 &&
    row.length % 2 === 0 &&
    row.every((it, i) => Number.isInteger(it) && (i % 2 === 0 ? Number(it) >= 10 : Number(it) >= 0 && Number(it) < 10))
  );
}

/** The rows of all grids of a panel, as they were read. */
export function gridRows(data: unknown): Array<{ path: PropertyKey[]; row: readonly unknown[] }> {
  return fields(data, ['sessions', '*', 'grid', 'rows', '*']).flatMap(({ path, value }) =>
    Array.isArray(value) ? [{ path, row: value }] : [],
  );
}

/**
 * A comma makes a row longer, or the others seem shorter, and its decimals are read as points of their own: what is
 * said of a grid's rows beside it is its echo.
 */
export function isEchoOfComma(problem: Problem, commas: readonly Problem[]): boolean {
  const grid = /^.*\.grid\.rows(?=\[\d+\]$)/.exec(problem.field)?.[0];
  return commas.some(
    (it) =>
      it !== problem &&
      it.file === problem.file &&
      ((grid !== undefined && it.field.startsWith(grid)) ||
        (it.field !== '' && problem.field.startsWith(`${it.field}[`))),
  );
}

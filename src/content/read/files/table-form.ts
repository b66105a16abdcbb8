import { dsvFormat } from 'd3-dsv';
import { type CellForm, type DecimalSign, formOf } from './number-cell.ts';

/** What stands between the cells of a row; blanks stand for any number of them. */
export type Separator = '\t' | ';' | ',' | 'blanks' | 'none';

/** How a table is written. */
export interface TableForm {
  separator: Separator;
  decimal: DecimalSign;
  /** What each column holds. */
  columns: readonly CellForm[];
  /** Index of the first row of numbers among the lines. */
  first: number;
  /** Index of a line before it that holds nothing but numbers, and not as many: a row that is broken. */
  odd: number | undefined;
}

/** Tried in this order: of forms that fit equally many lines, the first. */
const WRITTEN: ReadonlyArray<readonly [Separator, DecimalSign]> = [
  ['\t', '.'],
  ['\t', ','],
  [';', '.'],
  [';', ','],
  [',', '.'],
  ['blanks', '.'],
  ['blanks', ','],
  ['none', '.'],
  ['none', ','],
];

const PARSERS: Partial<Record<Separator, ReturnType<typeof dsvFormat>>> = {};

/** A comment, which may stand anywhere. */
export const isComment = (line: string) => /^\s*(?:#|%|\/\/|!)/.test(line);

/** The cells of a line, without blanks around them and without empty ones at its end. */
export function cellsOf(line: string, separator: Separator): string[] {
  let cells: string[];
  if (separator === 'none') cells = [line.trim()];
  else if (separator === 'blanks') cells = line.trim().split(/\s+/);
  else if (line.includes('"')) {
    PARSERS[separator] ??= dsvFormat(separator);
    cells = (PARSERS[separator].parseRows(line)[0] ?? []).map((it) => it.trim().replace(/^"(.*)"$/, '$1'));
  } else cells = line.split(separator).map((it) => it.trim());
  while (cells.length > 1 && cells.at(-1) === '') cells.pop();
  return cells;
}

/** Leading zeros of whole numbers: what stands behind a decimal comma that was taken for a separator. */
const LEADING_ZERO = /^[+-]?0\d/;
const WHOLE = /^[+-]?\d+$/;

/**
 * Finds how a table is written by its first lines: the form by which most lines in a row are alike, with two columns of
 * values where that is possible, else with one.
 *
 * @returns `'ambiguous'` where commas may part numbers or be within them, undefined where no line holds numbers
 */
export function tableForm(lines: readonly string[]): TableForm | 'ambiguous' | undefined {
  const found = WRITTEN.flatMap(([separator, decimal]) => {
    const fit = fitOf(lines, separator, decimal);
    return fit ? [fit] : [];
  });
  const several = found.filter(({ form }) => form.columns.filter((it) => it !== 'text').length > 1);
  const [best] = (several.length > 0 ? several : found).toSorted(
    (a, b) => b.alike - a.alike || textsIn(a) - textsIn(b),
  );
  if (!best) return undefined;
  return best.form.separator === ',' ? withoutCommaDoubt(lines, best.form, found) : best.form;
}

/** Columns that the form leaves as texts: a decimal comma that is not read as one makes words of numbers. */
const textsIn = ({ form }: Fit) => form.columns.filter((it) => it === 'text').length;

interface Fit {
  form: TableForm;
  /** Lines that are like the first row. */
  alike: number;
}

function fitOf(lines: readonly string[], separator: Separator, decimal: DecimalSign): Fit | undefined {
  const rows = lines.map((line) => (line.trim() === '' || isComment(line) ? undefined : cellsOf(line, separator)));
  const forms = rows.map((cells) => cells?.map((it) => formOf(it, decimal)));
  const valuesIn = (own: readonly CellForm[]) => own.filter((it) => it !== 'text').length;
  const isRow = (own: readonly CellForm[] | undefined): own is CellForm[] =>
    own !== undefined && valuesIn(own) > 0 && (separator === 'none' || own.length > 1);
  const isLike = (own: readonly CellForm[] | undefined, first: readonly CellForm[]) =>
    own !== undefined && own.length === first.length && own.every((it, i) => it === first[i] || first[i] === 'text');
  // Lines of the head may hold numbers too: rows are those of the form that most lines have, of forms with several values.
  const starts = forms.flatMap((own, i) => (isRow(own) ? [{ i, own, form: own.join() }] : []));
  const groups = [...Map.groupBy(starts, (it) => it.form).values()].toSorted(
    ([a, ...as], [b, ...bs]) =>
      Math.min(2, valuesIn(b?.own ?? [])) - Math.min(2, valuesIn(a?.own ?? [])) || bs.length - as.length,
  );
  const first = groups[0]?.[0]?.i;
  if (first === undefined) return undefined;
  const columns = forms[first] as CellForm[];
  const alike = forms.slice(first).filter((it) => isLike(it, columns)).length;
  const odd = forms.findIndex(
    (own, i) => i < first && isRow(own) && own.length > 1 && own.every((it) => it === 'number'),
  );
  return { form: { separator, decimal, columns, first, odd: odd < 0 ? undefined : odd }, alike };
}

/**
 * Commas part numbers, or are decimal commas: `400,0012` is two whole numbers or one. Where no number has a point, a
 * head with as many names settles it, and so does a leading zero; else it is not guessed.
 */
function withoutCommaDoubt(lines: readonly string[], form: TableForm, found: readonly Fit[]): TableForm | 'ambiguous' {
  const rows = lines
    .slice(form.first)
    .filter((line) => line.trim() !== '' && !isComment(line))
    .map((line) => cellsOf(line, ','));
  const numbers = rows.flatMap((cells) => cells.filter((_, i) => form.columns[i] === 'number'));
  if (form.columns.some((it) => it !== 'number') || !numbers.every((it) => WHOLE.test(it))) return form;
  const head = lines.slice(0, form.first).findLast((it) => it.trim() !== '');
  const names = head === undefined ? 0 : cellsOf(head, ',').length;
  const hasZeros = numbers.some((it) => LEADING_ZERO.test(it));
  if (names === form.columns.length && !hasZeros) return form;
  const single = found.find((it) => it.form.separator === 'none' && it.form.decimal === ',')?.form;
  if (single && form.columns.length === 2 && (names === 1 || hasZeros)) return single;
  return 'ambiguous';
}

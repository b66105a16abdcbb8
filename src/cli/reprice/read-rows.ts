import type { Problem } from '../../content/schema/problem.ts';
import { amountIn, type Cell, codeIn, currencyIn, dayIn, linkIn, yesIn } from './cells.ts';
import type { Column, PriceRow } from './price-row.ts';

/** What rows are read against. */
export interface RowContext {
  /** `YYYY-MM-DD`; the day of a price that names none. */
  day: string;
  today: string;
  /** Currencies that the guide can convert. */
  currencies: readonly string[];
  /** How fields are named in messages: columns, or flags. */
  fieldName: (column: Column) => string;
}

/** Where a row was found. */
export interface RowPlace {
  file: string;
  line?: number;
}

/** Reads one row: the price that it tells of, or all that is wrong with it. */
export function readRow(
  cells: Partial<Record<Column, string>>,
  { file, line }: RowPlace,
  context: RowContext,
): { row: PriceRow; problems: [] } | { row: undefined; problems: Problem[] } {
  const problems: Problem[] = [];
  /** Undefined where nothing was said, null where the cell is empty. */
  const cell = <T>(column: Column, read: (text: string) => Cell<T>): T | null | undefined => {
    const text = cells[column];
    if (text === undefined) return undefined;
    if (text === '' || text === '-') return null;
    const result = read(text);
    if ('value' in result) return result.value;
    const { wanted, hint } = result;
    problems.push({ file, line, field: context.fieldName(column), found: `"${text.slice(0, 80)}"`, wanted, hint });
    return undefined;
  };
  const currency = cell('currency', (text) => currencyIn(text.toUpperCase(), context.currencies)) ?? undefined;
  const amount = (text: string) => amountIn(text, hasThousandths(currency));
  const row: PriceRow = {
    place: line === undefined ? file : `${file}:${line}`,
    panel: cells.panel ?? '',
    date: cell('date', (text) => dayIn(text, context.today)) ?? context.day,
    list: cell('list', amount),
    paid: cell('paid', amount),
    currency,
    code: cell('code', codeIn) ?? (cells.code === undefined ? undefined : 'no'),
    link: cell('link', linkIn),
    paidLink: cell('paidLink', yesIn) ?? undefined,
    // An empty cell takes no note away.
    note: cell('note', (text) => ({ value: text.replaceAll(/\s+/g, ' ') })) ?? undefined,
    isConfirmed: false,
  };
  if (row.panel === '') {
    const field = context.fieldName('panel');
    problems.push({ file, line, field, found: 'nothing', wanted: 'the name of a panel, as its folder has it' });
  }
  return problems.length > 0 ? { row: undefined, problems } : { row, problems: [] };
}

/** A few currencies are divided into a thousand, and have amounts with three decimals. */
function hasThousandths(currency: string | undefined): boolean {
  if (!currency) return false;
  return (
    (new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2) > 2
  );
}

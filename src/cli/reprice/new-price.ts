import { parse } from 'yaml';
import { placeByDate } from '../../content/edit/by-date.ts';
import { openContent } from '../../content/edit/content-text.ts';
import type { Edit } from '../../content/edit/edit.ts';
import { EditError } from '../../content/edit/edit-error.ts';
import { decimal } from '../../content/edit/render.ts';
import { isBlock } from '../../content/schema/block.ts';
import { type Price, panelSchema } from '../../content/schema/panel.ts';
import { CODES, type PriceRow } from './price-row.ts';

/** Fields of a panel's file, in their usual order: where prices go in a file that has none. */
const PANEL_ORDER = Object.keys(panelSchema.shape);
const PRICE_ORDER = ['date', 'list', 'paid', 'currency', 'discountCode', 'link', 'paidLink', 'note'] as const;
type Field = (typeof PRICE_ORDER)[number];

/** The prices of a panel's file, in its order. */
export interface PricesRead {
  prices: Price[];
  /** As they were typed: what a price does not say is not there. */
  typed: ReadonlyArray<Readonly<Record<PropertyKey, unknown>>>;
}

/** @throws EditError where they can't be read */
export function pricesIn(text: string, path: string): PricesRead {
  let data: unknown;
  try {
    data = parse(openContent(text, path).yaml, { logLevel: 'silent' });
  } catch (error) {
    if (error instanceof EditError) throw error;
    throw new EditError(`${path} has a fault in its YAML; \`npm run check\` says where. Nothing was changed.`);
  }
  const typed = (isBlock(data) && data.prices) || [];
  const read = panelSchema.shape.prices.safeParse(typed);
  if (!read.success) {
    throw new EditError(`The prices in ${path} have a problem; \`npm run check\` says which. Nothing was changed.`);
  }
  return { prices: read.data, typed: typed as PricesRead['typed'] };
}

/** The newest of some prices. */
export function newestOf(prices: readonly Price[]): Price | undefined {
  return prices.toSorted((a, b) => b.date.localeCompare(a.date))[0];
}

/**
 * The price that a row tells of. What a row does not speak of is as it was in the newest price before it, as long as it
 * is no amount: that an amount still stood on that day is for the tester to say.
 *
 * @param same the price of that day that is there already: what the row does not speak of stays as it is
 */
export function newPrice(row: PriceRow, { newest, same }: { newest?: Price; same?: Price }, currency: string): Price {
  const before = same ?? newest;
  const amounts = row.isConfirmed ? newest : same;
  const said = <T>(value: T | null | undefined, otherwise: T | undefined) =>
    value === undefined ? otherwise : (value ?? undefined);
  const list = said(row.list, amounts?.list);
  const paid = said(row.paid, amounts?.paid);
  const link = said(row.link, before?.link);
  const note = said(row.note, same?.note);
  const code = row.code === undefined ? undefined : CODES[row.code];
  const nocode = { needed: false, testerEarns: false };
  return {
    date: row.date,
    ...(list !== undefined && { list }),
    ...(paid !== undefined && { paid }),
    currency: row.currency ?? before?.currency ?? currency,
    discountCode: row.code === undefined ? (before?.discountCode ?? nocode) : code ? { needed: true, ...code } : nocode,
    ...(link !== undefined && { link }),
    // Who earned by the link before is taken to earn by the new one, until the tester says otherwise.
    paidLink: link !== undefined && (row.paidLink ?? before?.paidLink ?? false),
    ...(note !== undefined && { note }),
  };
}

/** The edits that put a price into its file: a new item in the file's order, or what is otherwise in that of the day. */
export function priceEdits(price: Price, { prices, typed }: PricesRead): Edit[] {
  const wanted = written(price);
  const at = prices.findIndex((it) => it.date === price.date);
  if (at < 0) {
    const item = Object.fromEntries(
      PRICE_ORDER.flatMap((key) => (wanted[key] === undefined ? [] : [[key, asWritten(wanted[key])]])),
    );
    const place = placeByDate(
      prices.map((it) => it.date),
      price.date,
    );
    return [{ do: 'insert', list: ['prices'], item, at: place, order: PANEL_ORDER }];
  }
  const old = typed[at] ?? {};
  const found = written(prices[at] as Price);
  return PRICE_ORDER.flatMap((key): Edit[] => {
    if (JSON.stringify(found[key]) === JSON.stringify(wanted[key])) return [];
    const field = ['prices', at, key];
    if (wanted[key] === undefined) return [{ do: 'remove', field }];
    if (!Object.hasOwn(old, key)) return [{ do: 'add', field, value: asWritten(wanted[key]), order: PRICE_ORDER }];
    if (!isBlock(wanted[key])) return [{ do: 'set', field, value: asWritten(wanted[key]) }];
    return Object.entries(wanted[key]).map(([inner, value]) => ({ do: 'set', field: [...field, inner], value }));
  });
}

/** What of a price has to be written: not what is so anyway. */
function written({ discountCode, paidLink, ...price }: Price): Partial<Record<Field, unknown>> {
  return {
    ...price,
    ...((discountCode.needed || discountCode.testerEarns) && { discountCode }),
    ...(paidLink && { paidLink }),
  };
}

const asWritten = (value: unknown) => (typeof value === 'number' ? decimal(value, 2) : value);

import { dsvFormat } from 'd3-dsv';
import { parse } from 'yaml';
import type { Price } from '../../content/schema/panel.ts';
import type { PanelFile } from '../files/panel-files.ts';
import { newestOf, pricesIn } from './new-price.ts';
import { COLUMNS, type Column } from './price-row.ts';
import { SEPARATORS } from './read-cells.ts';

export type Separator = keyof typeof SEPARATORS;

/**
 * All panels that are not withdrawn, with their present prices and a day: a file of prices to be gone through and given
 * back. Where columns are divided by semicolons, decimals are by commas, as spreadsheets in such countries have it.
 *
 * @param day `YYYY-MM-DD`, that of the prices to be
 * @param currency the guide's, for panels without a price
 */
export function priceSheet(
  panels: readonly PanelFile[],
  { day, currency, separator = 'comma' }: { day: string; currency: string; separator?: Separator },
): string {
  const number = (value: number | undefined) => {
    const text = value === undefined ? '' : Number.isInteger(value) ? String(value) : value.toFixed(2);
    return separator === 'semicolon' ? text.replace('.', ',') : text;
  };
  const rows = panels
    .filter(({ status }) => status !== 'withdrawn')
    .map(({ slug, path, text }): Record<Column, string> => {
      const price = newestOf(pricesIn(text, path).prices);
      return {
        panel: slug,
        date: day,
        list: number(price?.list),
        paid: number(price?.paid),
        currency: price?.currency ?? currency,
        code: codeOf(price),
        link: price?.link ?? '',
        paidLink: price?.paidLink ? 'yes' : 'no',
        note: '',
      };
    });
  return `${dsvFormat(SEPARATORS[separator]).format(rows, [...COLUMNS])}\n`;
}

function codeOf(price: Price | undefined): string {
  if (!price?.discountCode.needed) return 'no';
  return price.discountCode.testerEarns ? 'earns' : 'needed';
}

/** The guide's own currency, and all that it can convert. */
export function guideCurrencies(guide: string): { own: string; known: string[] } {
  const data = parse(guide, { logLevel: 'silent' }) as {
    currency?: unknown;
    rates?: Array<{ currency?: unknown }>;
  } | null;
  const own = String(data?.currency ?? 'EUR');
  const rates = Array.isArray(data?.rates) ? data.rates : [];
  return { own, known: [own, ...rates.map((it) => String(it?.currency))] };
}

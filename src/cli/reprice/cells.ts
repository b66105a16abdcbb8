import { z } from 'zod';
import { dateHint } from '../../content/schema/date-hint.ts';
import { currency as currencySchema, webAddress } from '../../content/schema/fields.ts';
import { nearest } from '../../content/schema/suggest.ts';
import { CODES, type Code } from './price-row.ts';

/** What a cell holds, or what it should hold instead. */
export type Cell<T> = { value: T } | { wanted: string; hint?: string };

/** An amount of money in no currency's sign: `849`, `849.50`, `849,50`, `1 190`, `1.190,00`. */
export function amountIn(text: string, hasThousandths = false): Cell<number> {
  const wanted = 'an amount: a number above 0, at most 10,000,000, without a currency’s sign';
  const bare = text.replaceAll(/[\s\u00a0\u202f'’]+(?=\d{3}(?!\d))/g, '');
  const [, thousand = '', group = ''] = /^(\d{1,3})[.,](\d{3})$/.exec(bare) ?? [];
  if (thousand && !hasThousandths) {
    return {
      wanted: 'a price without a sign between thousands, and with two decimals at most',
      hint: `write ${thousand}${group}, or ${Number(`${thousand}.${group}`).toFixed(2)} if that is the price`,
    };
  }
  const parts = /^(\d+|\d{1,3}(?:\.\d{3})+(?=,|$)|\d{1,3}(?:,\d{3})+(?=\.|$))(?:[.,](\d{1,3}))?$/.exec(bare);
  if (!parts) {
    const number = /\d[\d.,]*/.exec(bare)?.[0];
    return number && number !== bare
      ? { wanted, hint: `write the number alone, as ${number}; the currency has a column of its own` }
      : { wanted };
  }
  const [, whole = '', decimals = '0'] = parts;
  const value = Number(`${whole.replaceAll(/[.,]/g, '')}.${decimals}`);
  return value > 0 && value <= 1e7 ? { value } : { wanted };
}

/** A day, not after today. */
export function dayIn(text: string, today: string): Cell<string> {
  if (!z.iso.date().safeParse(text).success) {
    const hint = dateHint(text);
    return { wanted: 'a day as YYYY-MM-DD', ...(hint && { hint }) };
  }
  return text > today ? { wanted: `a day that is not in the future (today is ${today})` } : { value: text };
}

/** A currency that the guide can convert. */
export function currencyIn(text: string, known: readonly string[]): Cell<string> {
  if (known.includes(text)) return { value: text };
  if (!currencySchema('').safeParse(text).success) {
    const near = nearest(text, known);
    return { wanted: `a currency code: ${known.join(', ')}`, ...(near && { hint: `did you mean ${near}?` }) };
  }
  return {
    wanted: `a currency that the guide can convert: ${known.join(', ')}`,
    hint: `add a rate for ${text} to guide.yaml`,
  };
}

/** Whether a code was needed. */
export function codeIn(text: string): Cell<Code> {
  const word = text.toLowerCase();
  if (word in CODES) return { value: word as Code };
  return {
    wanted: 'no, needed (a code that earns you nothing), or earns (one that you earn by)',
    hint: 'the code itself goes into the note, if readers shall have it',
  };
}

/** A web address. */
export function linkIn(text: string): Cell<string> {
  if (webAddress('').safeParse(text).success) return { value: text };
  const hint = /^[\w-]+(\.[\w-]+)+(\/\S*)?$/.test(text) ? `write https://${text}` : undefined;
  return { wanted: 'a web address that starts with https://', ...(hint && { hint }) };
}

/** Yes or no. */
export function yesIn(text: string): Cell<boolean> {
  if (/^(yes|y|true)$/i.test(text)) return { value: true };
  if (/^(no|n|false)$/i.test(text)) return { value: false };
  return { wanted: 'yes (you earn when a reader buys through the link) or no' };
}

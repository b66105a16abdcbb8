import type { BesideNoEffect } from '../../../measure/exposure/no-effect.ts';

/** How flicker lies to the line of no observable effect, as addresses name it. */
export const FLICKER_VALUES = { under: 'steady', above: 'above', 'no-line': 'faster' } as const satisfies Record<
  BesideNoEffect,
  string
>;
export type FlickerValue = (typeof FLICKER_VALUES)[BesideNoEffect];

/**
 * What a row of the ranking can be filtered and sorted by. What it does not show is in one short text: pages write it,
 * their scripts read it. Undefined is not known; a reading below a bound counts as the bound.
 */
export interface RowData {
  slug: string;
  maker: string;
  /** What it can be narrowed by from one number to another, by the filter's name, and what it is sorted by. */
  numbers: Readonly<Record<string, number | undefined>>;
  /** Measured peaks, nm. */
  wavelengths: readonly number[];
  /** Flicker beside the line of no observable effect: at or under it, above it, or too fast for a line. */
  flicker?: FlickerValue | undefined;
  /** Every claim that could be checked held. */
  hasHeld?: boolean | undefined;
  /** `2026-10-06` */
  tested?: string | undefined;
}

/** The number that a reader's own price takes the place of. */
export const PRICE_FILTER = 'price';

const DIGITS = 5;

/**
 * The fields between bars, in a fixed order.
 *
 * @param names of the numbers, in the order that the page tells the script too
 */
export function encodeRow(row: Omit<RowData, 'wavelengths'>, names: readonly string[]): string {
  const yes = (it: boolean | undefined) => (it === undefined ? '' : it ? '1' : '0');
  return [
    row.slug,
    row.maker,
    ...names.map((name) => short(row.numbers[name])),
    row.flicker ?? '',
    yes(row.hasHeld),
    row.tested ?? '',
  ].join('|');
}

/** The number that a cell shows, less its ±; undefined for a gap. A bound counts as itself. */
export function shownNumber(text: string): number | undefined {
  const [value] = /−?[\d,]*\.?\d+/.exec(text) ?? [];
  return value === undefined ? undefined : Number(value.replaceAll(',', '').replace('−', '-'));
}

/** The numbers that a cell lists: `661.0, 848.0`. */
export const shownNumbers = (text: string) => (text.match(/\d+(\.\d+)?/g) ?? []).map(Number);

const short = (it: number | undefined) => (it === undefined ? '' : Number(it.toPrecision(DIGITS)).toString());

/** Whose row a text of fields is. */
export const slugOf = (text: string) => text.split('|', 1)[0] ?? '';

/** The fields again; what cannot be read is not known. */
export function decodeRow(text: string, names: readonly string[]): Omit<RowData, 'wavelengths'> {
  const [slug = '', maker = '', ...rest] = text.split('|');
  const number = (it: string | undefined) => (it === undefined || it === '' ? undefined : Number(it));
  const yes = (it: string | undefined) => (it === '1' ? true : it === '0' ? false : undefined);
  const numbers = Object.fromEntries(names.map((name, i) => [name, number(rest[i])]));
  const [flicker, held, tested] = rest.slice(names.length);
  return {
    slug,
    maker,
    numbers,
    flicker: Object.values(FLICKER_VALUES).find((it) => it === flicker),
    hasHeld: yes(held),
    tested: tested || undefined,
  };
}

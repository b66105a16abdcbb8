import type { BesideNoEffect } from '../../../measure/exposure/no-effect.ts';

/** How flicker lies to the line of no observable effect, as addresses name it. */
export const FLICKER_VALUES = { under: 'steady', above: 'above', 'no-line': 'faster' } as const satisfies Record<
  BesideNoEffect,
  string
>;
export type FlickerValue = (typeof FLICKER_VALUES)[BesideNoEffect];

/**
 * What a row of the guide's tables can be filtered by, in one short text: pages write it, the filter reads it.
 * Undefined is not known; a reading below a bound counts as the bound.
 */
export interface RowData {
  slug: string;
  maker: string;
  /** Base currency. */
  price?: number | undefined;
  /** Optical power, W. */
  power?: number | undefined;
  /** Mean irradiance, mW/cm². */
  mean?: number | undefined;
  /** µT with the panel on. */
  magnetic?: number | undefined;
  /** dB(A) with the panel on. */
  sound?: number | undefined;
  /** Measured peaks, nm. */
  wavelengths: readonly number[];
  /** Flicker beside the line of no observable effect: at or under it, above it, or too fast for a line. */
  flicker?: FlickerValue | undefined;
  /** Every claim that could be checked held. */
  hasHeld?: boolean | undefined;
  /** `2026-10-06` */
  tested?: string | undefined;
}

const NUMBERS = ['price', 'power', 'mean', 'magnetic', 'sound'] as const;
const DIGITS = 5;

/** The fields between bars, in a fixed order. */
export function encodeRow(row: RowData): string {
  const yes = (it: boolean | undefined) => (it === undefined ? '' : it ? '1' : '0');
  return [
    row.slug,
    row.maker,
    ...NUMBERS.map((name) => (row[name] === undefined ? '' : Number(row[name]?.toPrecision(DIGITS)).toString())),
    row.wavelengths.join(','),
    row.flicker ?? '',
    yes(row.hasHeld),
    row.tested ?? '',
  ].join('|');
}

/** The fields again; what cannot be read is not known. */
export function decodeRow(text: string): RowData {
  const [slug = '', maker = '', ...rest] = text.split('|');
  const number = (it: string | undefined) => (it === undefined || it === '' ? undefined : Number(it));
  const yes = (it: string | undefined) => (it === '1' ? true : it === '0' ? false : undefined);
  const [price, power, mean, magnetic, sound, wavelengths = '', flicker, held, tested] = rest;
  return {
    slug,
    maker,
    price: number(price),
    power: number(power),
    mean: number(mean),
    magnetic: number(magnetic),
    sound: number(sound),
    wavelengths: wavelengths === '' ? [] : wavelengths.split(',').map(Number),
    flicker: Object.values(FLICKER_VALUES).find((it) => it === flicker),
    hasHeld: yes(held),
    tested: tested || undefined,
  };
}

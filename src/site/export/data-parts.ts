import type { Ledger } from '../../ledger/ledger.ts';
import type { CarriedOver, Figure, Flag } from '../../measure/figure.ts';

/** Panels whose figures are given away: those that are published. */
export const publishedPanels = (ledger: Ledger) =>
  [...ledger.panels.values()].filter((it) => it.data.status === 'published');

/** Units as data files write them: the base currency in the place of "currency". */
export const dataUnit = (unit: string, currency: string) => unit.replace('currency', currency);

/** A figure's flags, with the figure that one was handed on from; two sentences of one check are one. */
export function flagsData({
  flags,
}: Figure): Array<{ check: string; severity: Flag['severity']; from: string | null }> {
  const all = flags.map(({ check, severity, from = null }) => ({ check, severity, from }));
  return [...new Map(all.map((it) => [JSON.stringify(it), it])).values()];
}

/** Days of the earlier sessions whose readings a figure rests on, and whether newer ones went in too. */
export const carriedData = ({ from, isWhole }: CarriedOver) => ({ from, in_part: !isWhole });

/**
 * A text that a spreadsheet would run as a formula gets an apostrophe before it. A reading such as "-3 C" is
 * none, though it starts with a sign.
 */
export function harmless(text: string): string {
  const isReading = /^-\d+(\.\d+)?( [^-+*=]*)?$/.test(text);
  return /^[=+\-@\t\r]/.test(text) && !isReading ? `'${text}` : text;
}

/** Significant digits of what is worked out beside a value, which no reading comes near; values are in full. */
const DIGITS = 10;

/** An uncertainty or the end of an interval for a table; nothing where there is none. */
export const short = (it: number | null | undefined) =>
  typeof it === 'number' ? Number(it.toPrecision(DIGITS)) : null;

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

/**
 * Significant digits in data files. No reading comes near those of a value, so that all that is made of it can be
 * worked out again; of an uncertainty two tell what there is to know (GUM 7.2.6), and the ends of an interval go as far
 * as it does.
 */
const DIGITS = { value: 12, uncertainty: 5, end: 7, other: 10 } as const;

const rounded = (it: number, digits: number) => Number(it.toPrecision(digits));

/** A number that is no figure's for a table; nothing where there is none. */
export const short = (it: number | null | undefined) => (typeof it === 'number' ? rounded(it, DIGITS.other) : null);

/** A value as data files have it. */
export const valueData = (it: number) => rounded(it, DIGITS.value);

/** What a figure's numbers are in data files; null for what it does not have. */
export function figureNumbers({ value, standardUncertainty: u, interval95 }: Figure) {
  return {
    value: valueData(value),
    uncertainty: u === null ? null : rounded(u, DIGITS.uncertainty),
    interval95:
      interval95 && ([rounded(interval95[0], DIGITS.end), rounded(interval95[1], DIGITS.end)] as [number, number]),
  };
}

import type { Bound, Figure, Unassessed, Unit } from '../figure.ts';
import { number } from '../numbers.ts';

/** Which end of an interval is the cautious one: the high end of a share, the low end of a time. */
export type Cautious = 'high' | 'low';

/** Significant digits of numbers in a sentence. */
const DIGITS = 3;

/**
 * The value to reckon with if one is cautious: that end of the 95 % interval; the bound of a bounded figure; the
 * value itself where its uncertainty is not known.
 *
 * @returns undefined where the figure is bounded on the other side, so that nothing limits it on this one
 */
export function cautiousEnd(figure: Figure, side: Cautious): number | undefined {
  if (figure.bound && (figure.bound === 'below') !== (side === 'high')) return undefined;
  if (!figure.interval95) return figure.value;
  return figure.interval95[side === 'high' ? 1 : 0];
}

/** Rounds to three significant digits, away from the mild side: a rounded share is never below the share. */
export function roundedTo(value: number, side: Cautious): number {
  if (value === 0 || !Number.isFinite(value)) return value;
  const step = 10 ** (DIGITS - 1 - Math.floor(Math.log10(Math.abs(value))));
  // 42.1 is 421.00000000000006 tenths; what floating point adds is no reason to go up.
  const steps = Number((value * step).toPrecision(12));
  return Number(((side === 'high' ? Math.ceil(steps) : Math.floor(steps)) / step).toPrecision(DIGITS));
}

/** A number in a sentence, with its unit; a pure number is a multiple. */
export function amount(value: number, unit: Unit): string {
  return unit === '1' ? `${number(value, DIGITS)} times` : `${number(value, DIGITS)} ${unit}`;
}

/** A figure as it was read: "0.31 µT", "below 0.1 µT". */
export function asRead(figure: Figure): string {
  return `${figure.bound ? `${figure.bound} ` : ''}${amount(figure.value, figure.unit)}`;
}

/** What stands between a result and its formula: "s < 100 × ..." where the reading is a bound from above. */
export function relation(bound: Bound | undefined): '=' | '<' | '>' {
  if (!bound) return '=';
  return bound === 'below' ? '<' : '>';
}

/**
 * An outcome and its cautious end, in words. `of` follows the value: "of the limit".
 *
 * @param say how a value is written; its number and unit where left out
 */
export function outcome(
  figure: Figure,
  side: Cautious,
  of = '',
  say: (value: number) => string = (value) => amount(value, figure.unit),
): string {
  const value = [`${figure.bound ? `${figure.bound} ` : ''}${say(figure.value)}`, of].filter((it) => it).join(' ');
  const end = cautiousEnd(figure, side);
  if (end === undefined) return `${value} (a bound; how far beyond it is not known)`;
  if (figure.interval95) return `${value}, at the cautious end of the interval ${say(roundedTo(end, side))}`;
  if (figure.bound) return `${value} (a bound, which is itself used as the cautious end)`;
  return `${value} (the value itself is used, for its uncertainty is not known: ${figure.uncertaintyAbsent})`;
}

/** Seconds in words: "47.1 s"; from two minutes up with the minutes beside them: "403 s (6 min 43 s)". */
export function timeWords(seconds: number): string {
  const shown = Number(seconds.toPrecision(DIGITS));
  const minutes = shown >= 120 ? ` (${Math.floor(shown / 60)} min ${Math.round(shown % 60)} s)` : '';
  return `${number(shown, DIGITS)} s${minutes}`;
}

/** The figure with more said of what its budget leaves out. */
export function leavingOut(figure: Figure, ...more: readonly Unassessed[]): Figure {
  return { ...figure, unassessed: [...figure.unassessed, ...more] };
}

/** Said where a budget has no line for the meter's error in near-infrared: nothing then makes the share a strict one. */
export const SPECTRAL_UNKNOWN = 'How the meter errs in near-infrared is not known, and the true share may be higher.';

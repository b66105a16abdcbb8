import type { Figure } from '../figure.ts';

/** Which end of an interval is the cautious one: the high end of a share, the low end of a time. */
export type Cautious = 'high' | 'low';

/** Significant digits of what is rounded to the cautious side. */
const DIGITS = 3;

/**
 * The value to count on if one is cautious: that end of the 95 % interval; the bound of a bounded figure; the
 * value itself where its uncertainty is not known.
 *
 * @returns undefined where the figure is bounded on the other side, so that nothing limits it on this one
 */
export function cautiousEnd(figure: Figure, side: Cautious): number | undefined {
  if (figure.bound && (figure.bound === 'below') !== (side === 'high')) return undefined;
  if (!figure.interval95) return figure.value;
  const [low, high] = figure.interval95;
  return side === 'high' ? high : low;
}

/** Rounds to three significant digits, away from the mild side: a rounded share is never below the share. */
export function roundedTo(value: number, side: Cautious): number {
  if (value === 0 || !Number.isFinite(value)) return value;
  const step = 10 ** (DIGITS - 1 - Math.floor(Math.log10(Math.abs(value))));
  // 42.1 is 421.00000000000006 tenths; what floating point adds is no reason to go up.
  const steps = Number((value * step).toPrecision(12));
  return Number(((side === 'high' ? Math.ceil(steps) : Math.floor(steps)) / step).toPrecision(DIGITS));
}

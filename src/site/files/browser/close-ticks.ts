/** Ticks of the axes of a plot of which a part is in view. No DOM. */
import { ticks } from 'd3-array';
import { fixed } from '../../../words/format.ts';

/** An axis of logarithms that is longer than this has ticks at 1, 2 and 5 times powers of ten. */
const LONG = 4;

/** Round numbers within a part of an axis. */
export function axisTicks(from: number, to: number, isLogarithmic: boolean, count: number): number[] {
  if (!isLogarithmic || to / from < LONG) return ticks(from, to, count);
  const first = Math.floor(Math.log10(from));
  const decades = Array.from({ length: Math.ceil(Math.log10(to)) - first + 1 }, (_, i) => 10 ** (first + i));
  return decades.flatMap((it) => [it, 2 * it, 5 * it]).filter((it) => it >= from && it <= to);
}

/** A tick's number with the decimals that tell it from its neighbours. */
export function tickText(i: number, all: ReadonlyArray<{ value: number }>): string {
  const value = all[i]?.value ?? 0;
  const steps = all.slice(1).map((it, k) => it.value - (all[k]?.value ?? 0));
  const step = Math.min(...steps.filter((it) => it > 0));
  const decimals = Number.isFinite(step) ? Math.max(0, Math.ceil(-Math.log10(step) - 1e-9)) : 2;
  return fixed(value, decimals);
}

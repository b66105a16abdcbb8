import { quickselect } from 'simple-statistics';
import { at } from '../at.ts';

/** How far a result spreads over the trials. */
export interface Spread {
  standardUncertainty: number;
  interval95: readonly [number, number];
}

/** Standard deviation and the 2.5 % and 97.5 % points of some trials. */
export function spreadOf(values: Float64Array): Spread {
  const n = values.length;
  let mean = 0;
  for (const it of values) mean += it;
  mean /= n;
  let squares = 0;
  for (const it of values) squares += (it - mean) ** 2;
  // The library asks for an array and takes anything with places.
  const list = values.slice() as unknown as number[];
  const low = Math.max(0, Math.round(0.025 * n) - 1);
  const high = n - 1 - low;
  quickselect(list, low, 0, n - 1);
  quickselect(list, high, low + 1, n - 1);
  return {
    standardUncertainty: Math.sqrt(squares / (n - 1)),
    interval95: [at(list, low), at(list, high)],
  };
}

/** A value is open when the ends of its interval are further apart than this factor. Our own choice. */
export const WIDEST_RANGE = 3.3;

/** Whether a spread leaves a value above zero open. */
export function isOpen({ interval95: [low, high] }: Pick<Spread, 'interval95'>): boolean {
  return high > WIDEST_RANGE * low;
}

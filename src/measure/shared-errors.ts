import type { Figure } from './figure.ts';
import { degreesOfFreedomFrom } from './uncertainty.ts';

/** The errors of a figure over its value, in the order of their numbers; errors of one key have one number. */
export interface ErrorShares {
  error: Int32Array;
  share: Float64Array;
  degreesOfFreedom: Float64Array;
}

/**
 * Prepares figures to be held against one another, so that a ranking of a thousand panels can go through all of its
 * pairs: what is looked up by its key here is found by its place afterwards.
 */
export function errorShares<T extends readonly Figure[]>(figures: readonly [...T]): { [K in keyof T]: ErrorShares };
export function errorShares(figures: readonly Figure[]): ErrorShares[] {
  const numbers = new Map<string, number>();
  return figures.map(({ value, budget }) => {
    const parts: Part[] = [];
    for (const { source, contribution } of budget) {
      const { key, degreesOfFreedom } = source;
      const error = numbers.get(key) ?? numbers.size;
      // A number that has just been given is none that this figure has already.
      const known = error < numbers.size ? parts.find((it) => it.error === error) : undefined;
      numbers.set(key, error);
      if (known) {
        known.share += contribution / value;
        known.degreesOfFreedom = degreesOfFreedom;
      } else parts.push({ error, share: contribution / value, degreesOfFreedom });
    }
    return sharesOf(parts.sort((a, b) => a.error - b.error));
  });
}

interface Part {
  error: number;
  share: number;
  degreesOfFreedom: number;
}

/** Filled by hand: to make a typed list of another one takes ten times as long. */
function sharesOf(parts: readonly Part[]): ErrorShares {
  const shares = {
    error: new Int32Array(parts.length),
    share: new Float64Array(parts.length),
    degreesOfFreedom: new Float64Array(parts.length),
  };
  parts.forEach((part, i) => {
    shares.error[i] = part.error;
    shares.share[i] = part.share;
    shares.degreesOfFreedom[i] = part.degreesOfFreedom;
  });
  return shares;
}

/** How the errors of two figures lie to each other, relative to the figures' values. */
export interface SharedErrors {
  /** Variances of the two, and their covariance. */
  above: number;
  below: number;
  shared: number;
  /** Standard uncertainty of the difference of the relative errors, and its effective degrees of freedom. */
  difference: number;
  degreesOfFreedom: number;
}

/** Takes the errors of two figures of one `errorShares` together; those with one number are one error. */
export function togetherIn(above: ErrorShares, below: ErrorShares): SharedErrors {
  const sums = { above: 0, below: 0, shared: 0, squares: 0, fourths: 0 };
  let i = 0;
  let j = 0;
  while (i < above.error.length || j < below.error.length) {
    const [a, b] = [above.error[i] ?? Number.POSITIVE_INFINITY, below.error[j] ?? Number.POSITIVE_INFINITY];
    const degreesOfFreedom = (a <= b ? above.degreesOfFreedom[i] : below.degreesOfFreedom[j]) as number;
    const up = a <= b ? (above.share[i++] as number) : 0;
    const down = b <= a ? (below.share[j++] as number) : 0;
    sums.above += up * up;
    sums.below += down * down;
    sums.shared += up * down;
    const square = (up - down) ** 2;
    sums.squares += square;
    sums.fourths += square ** 2 / degreesOfFreedom;
  }
  return {
    above: sums.above,
    below: sums.below,
    shared: sums.shared,
    difference: Math.sqrt(sums.squares),
    degreesOfFreedom: degreesOfFreedomFrom(sums.squares, sums.fourths),
  };
}

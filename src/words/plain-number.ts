/** Steps of more decimals than these, and more steps than these, are left to the library. */
const MOST_STEPS = 1e9;
const STEPS_OF_ONE = [1, 10, 100, 1000, 10_000, 100_000, 1_000_000];
/** Nearer to half a step than this, a value may be written on either side of it. */
const BESIDE_HALF = 1e-6;

/** True where a number of steps lies so near between two whole ones that it is left to a library which of them is written. */
export const isBesideHalf = (steps: number) => Math.abs(steps - Math.round(steps)) > 0.5 - BESIDE_HALF;

/**
 * A number from nought on, as the library for formats writes it, which takes several times as long; undefined where it
 * is left to that.
 */
export function fixedPlainly(value: number, decimals: number): string | undefined {
  const one = STEPS_OF_ONE[decimals];
  if (one === undefined) return undefined;
  const steps = Math.round(value * one);
  if (!(steps < MOST_STEPS) || isBesideHalf(value * one)) return undefined;
  const whole = Math.floor(steps / one);
  const text = inThousands(whole);
  return one === 1 ? text : `${text}.${String(steps - whole * one).padStart(decimals, '0')}`;
}

/** A whole number with thousands marks. */
const inThousands = (whole: number): string =>
  whole < 1000 ? String(whole) : `${inThousands(Math.floor(whole / 1000))},${String(whole % 1000).padStart(3, '0')}`;

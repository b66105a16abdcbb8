import { at } from '../measure/at.ts';
import { isBesideHalf } from './plain-number.ts';

/** Powers of ten within which numbers are written without an exponent. */
const LOWEST = -6;
const HIGHEST = 6;
const [LEAST, MOST] = [10 ** LOWEST, 10 ** HIGHEST];
/** What a number of each power is multiplied by to have two digits before the point. */
const FACTORS = Array.from({ length: HIGHEST - LOWEST + 1 }, (_, i) => 10 ** (1 - LOWEST - i));
/** What is written already, by power and digits; a calculation page has hundreds of such numbers, few of which differ. */
const WRITTEN: string[][] = FACTORS.map(() => []);

const rounded = (value: number) => Number(value.toPrecision(2)).toString();

/**
 * A number from nought on with two significant digits, without zeros at its end, as JavaScript writes numbers: `0.25`,
 * `3`, `120`.
 */
export function twoDigits(value: number): string {
  if (!(value >= LEAST && value < MOST)) return value === 0 ? '0' : rounded(value);
  const place = Math.floor(Math.log10(value)) - LOWEST;
  const steps = value * at(FACTORS, place);
  if (isBesideHalf(steps)) return rounded(value);
  const digits = Math.round(steps);
  const known = at(WRITTEN, place);
  known[digits] ??= rounded(value);
  return known[digits];
}

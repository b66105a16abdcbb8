/** Numbers in sentences about limits. No statement is put into words here, so that page scripts can use it. */
import type { Figure, Unit } from '../../measure/figure.ts';
import { number } from '../../measure/numbers.ts';

/** Significant digits of numbers in a sentence. */
const DIGITS = 3;

/** What stands before the number that a cautious reader counts on. */
export const AT_CAUTIOUS_END = 'at the cautious end of the interval';

/** What is said where there is no interval to have such an end. */
export const VALUE_USED = 'the value itself is used, for its uncertainty is not known';

/** A number in a sentence, with its unit; a pure number is a multiple. */
export function amount(value: number, unit: Unit): string {
  return unit === '1' ? `${number(value, DIGITS)} times` : `${number(value, DIGITS)} ${unit}`;
}

/** A figure as it was read: "0.31 µT", "below 0.1 µT". */
export function asRead({ bound, value, unit }: Pick<Figure, 'bound' | 'value' | 'unit'>): string {
  return `${bound ? `${bound} ` : ''}${amount(value, unit)}`;
}

/** A frequency as it was read: "40 kHz" from 1000 Hz up. */
export function hertzWords(hertz: number): string {
  return hertz >= 1000 ? `${number(hertz / 1000, DIGITS)} kHz` : amount(hertz, 'Hz');
}

/** The text with a capital letter, to begin a sentence. */
export const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

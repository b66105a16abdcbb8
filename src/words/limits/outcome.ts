import { type Cautious, cautiousEnd, roundedTo } from '../../measure/exposure/cautious-end.ts';
import type { Figure } from '../../measure/figure.ts';
import { say } from '../say.ts';
import { AT_CAUTIOUS_END, amount, VALUE_USED } from './amounts.ts';

/** The cautious end of a figure alone, as it stands within a sentence; undefined for a figure without an interval. */
export function cautiousPart(
  figure: Figure,
  side: Cautious,
  written: (value: number) => string = (value) => amount(value, figure.unit),
): string | undefined {
  const end = cautiousEnd(figure, side);
  return figure.interval95 && end !== undefined ? written(roundedTo(end, side)) : undefined;
}

/**
 * An outcome and its cautious end, in words. `of` follows the value: "of the limit".
 *
 * @param written how a value is written; its number and unit where left out
 */
export function outcome(
  figure: Figure,
  side: Cautious,
  of = '',
  written: (value: number) => string = (value) => amount(value, figure.unit),
): string {
  const value = [`${figure.bound ? `${figure.bound} ` : ''}${written(figure.value)}`, of].filter((it) => it).join(' ');
  const end = cautiousEnd(figure, side);
  if (end === undefined) return `${value} (a bound; how far beyond it is not known)`;
  if (figure.interval95) return `${value}, ${AT_CAUTIOUS_END} ${written(roundedTo(end, side))}`;
  if (figure.bound) return `${value} (a bound, which is itself used as the cautious end)`;
  return `${value} (${VALUE_USED}: ${say(figure.uncertaintyAbsent ?? { code: 'uncertainty-not-known' })})`;
}

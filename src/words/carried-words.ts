import { type FigureOrGap, isFigure } from '../measure/figure.ts';
import { listed, showDate } from './format.ts';

/**
 * From which day a figure is, where it rests on readings that were not taken again: `from 10 Nov 2026`, or `in part from
 * 10 Nov 2026` where newer ones went in too. Nothing for any other figure.
 */
export function carriedWords(it: FigureOrGap | undefined): string | undefined {
  if (!isFigure(it) || !it.carriedOver) return undefined;
  const { from, isWhole } = it.carriedOver;
  return `${isWhole ? '' : 'in part '}from ${listed(from.map(showDate))}`;
}

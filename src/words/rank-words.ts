/** Ranks in words, for pages and for the scripts that calculate ranks anew. */
import type { Rank } from '../measure/money/ranking.ts';
import { ordinal } from './format.ts';

/** What a panel is that was measured alike with no other of its class: it has a place, but no rank. */
export const ALONE = 'alone';

/** True where there is no other panel to be ranked with. */
export const isAlone = ({ of }: Pick<Rank, 'of'>) => of === 1;

/** `2nd`, or `2nd to 4th`. */
export function rankRange([low, high]: readonly [number, number]): string {
  return low === high ? ordinal(low) : `${ordinal(low)} to ${ordinal(high)}`;
}

/** `2nd to 4th`; the place alone where the range is not known; `alone` where nothing is ranked with it. */
export function rankText(rank: Rank): string {
  if (isAlone(rank)) return ALONE;
  return rank.range ? rankRange(rank.range) : ordinal(rank.place);
}

/** `2–4` for a column of ranks; the place alone where the range is not known; `alone` where nothing is ranked with it. */
export function rankFigure(rank: Rank): string {
  if (isAlone(rank)) return ALONE;
  const [low, high] = rank.range ?? [rank.place, rank.place];
  return low === high ? String(low) : `${low}–${high}`;
}

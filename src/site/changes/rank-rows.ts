import type { Ledger } from '../../ledger/ledger.ts';
import type { RankBasis } from '../../measure/catalogue/rows.ts';
import { ordinal } from '../../words/format.ts';
import { ALONE, rankRange } from '../../words/rank-words.ts';
import { BASES } from '../guide/rank-basis.ts';
import type { Row } from '../shared/told.ts';
import type { RankChanges } from './compare-ranks.ts';
import { isRanked, type RankState } from './guide-state.ts';

/** Places that moved: `2nd (2nd to 3rd) → 2nd of 3, Torso`. */
export function rankRows(
  { ranks }: Pick<RankChanges, 'ranks'>,
  { sizeClasses }: Pick<Ledger['guide'], 'sizeClasses'>,
): Row[] {
  const className = (id: string | null) => sizeClasses.find((it) => it.id === id)?.name;
  return ranks.map((it) => ({
    name: it.name,
    text: `${rankWords(it.was)} → ${rankWords(it.now)}${isRanked(it.now) ? ` of ${it.now.of}` : ''}${inClass(className(it.sizeClass))}${basisWords(it.basis)}`,
    address: `/panels/${it.slug}/`,
  }));
}

/** Ties made and undone. */
export function tieRows({ ties }: Pick<RankChanges, 'ties'>): Row[] {
  return ties.map(({ change, panels: [one, other], basis }) => ({
    name: change === 'made' ? 'made' : 'undone',
    text: `${one.name} and ${other.name}${change === 'made' ? ' can’t be told apart now' : ' are told apart now'}${basisWords(basis)}`,
  }));
}

/** `2nd (1st to 3rd)`: the place and its range. */
function rankWords(rank: RankState): string {
  if (!isRanked(rank)) return `not ranked (${rank.absent})`;
  const { place, of, range } = rank;
  if (of === 1) return ALONE;
  return range && range[0] !== range[1] ? `${ordinal(place)} (${rankRange(range)})` : ordinal(place);
}

const inClass = (name: string | undefined) => (name === undefined ? '' : `, ${name}`);

/** Nothing for the ranking that the guide opens with; the other one is named. */
function basisWords(basis: RankBasis): string {
  return basis === 'optical' ? '' : `, by ${BASES.emitted.words.replace(/, .*$/, '')}`;
}

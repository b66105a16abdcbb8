import type { PanelEntry, RankBasis } from '../../ledger/ledger.ts';
import type { ListedMetricId } from '../../measure/metrics.ts';
import type { Statement } from '../../measure/statement.ts';
import { type Dagger, markOf } from '../../words/flags.ts';
import { say } from '../../words/say.ts';

/** What a ranking goes by: the figure, and what it is called in a caption. */
export const BASES = {
  optical: { metric: 'price-per-watt', words: 'price per optical watt' },
  emitted: { metric: 'price-per-emitted-watt', words: 'price per emitted watt, as modelled' },
} as const satisfies Readonly<Record<RankBasis, { metric: ListedMetricId; words: string }>>;

/** A panel's place by a basis, or why it has none. */
export function placing(panel: PanelEntry, basis: RankBasis): Pick<PanelEntry, 'rank' | 'rankAbsent'> {
  return basis === 'optical' ? panel : panel.byEmitted;
}

/** The mark of the figure that a rank goes by. */
export function markOfRank({ figures }: PanelEntry, basis: RankBasis): Dagger | undefined {
  return markOf(figures.get(BASES[basis].metric));
}

/** Why a panel has no rank, in words; nothing where it has one. */
export function rankAbsence({ rankAbsent }: Pick<PanelEntry, 'rankAbsent'>): string {
  return saidOr(rankAbsent);
}

/** A statement in words; nothing where there is none. */
export function saidOr(it: Statement | undefined): string {
  return it === undefined ? '' : say(it);
}

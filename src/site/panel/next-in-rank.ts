import { amongRanked, type RankedTogether } from '../../ledger/among-ranked.ts';
import type { PanelEntry } from '../../ledger/ledger.ts';
import { compareAddress } from '../compare/browser/compare-address.ts';
import { madeOfAll } from '../shared/page-reads.ts';

/** The way to a panel's comparison with the one that it is most likely to be held against. */
export interface Against {
  /** The other's model. */
  model: string;
  /** The two side by side. */
  address: string;
}

/** Against the panel that ranks one place before it, or after it for the first; undefined where it ranks with none. */
export const nextInRank = madeOfAll('next-in-rank', amongRanked(within));

/** The pairs of one ranking. */
function within(panels: RankedTogether): Array<[PanelEntry, Against]> {
  const ranked = panels.filter((it) => it.rank);
  return ranked.flatMap((panel, at): Array<[PanelEntry, Against]> => {
    const other = ranked[at === 0 ? 1 : at - 1];
    return other ? [[panel, { model: other.data.model, address: compareAddress([panel.slug, other.slug]) }]] : [];
  });
}

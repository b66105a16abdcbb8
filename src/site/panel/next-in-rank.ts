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
export const nextInRank = madeOfAll('next-in-rank', (panel, ledger): Against | undefined => {
  const groups = ledger.classes.find((it) => it.sizeClass === panel.sizeClass)?.groups ?? [];
  const ranked = groups.find((it) => it.panels.includes(panel))?.panels.filter((it: PanelEntry) => it.rank) ?? [];
  const at = ranked.indexOf(panel);
  const other = at < 0 ? undefined : ranked[at === 0 ? 1 : at - 1];
  return other && { model: other.data.model, address: compareAddress([panel.slug, other.slug]) };
});

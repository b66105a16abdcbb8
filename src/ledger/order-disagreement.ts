import { amongRanked, type RankedTogether } from './among-ranked.ts';
import type { PanelEntry } from './ledger.ts';

/** Where the price of a watt in the frame and that of a watt of all the light put two panels in opposite orders. */
export interface OrderDisagreement {
  /** Panels of its class that it comes before by the light in the frame, and behind by all the light; by rank. */
  behind: PanelEntry[];
  /** The other way round. */
  before: PanelEntry[];
}

/**
 * The panels that one stands to otherwise by all the light than by the light in the frame, beyond what either leaves open:
 * no tie in either order, and opposite ones. Undefined where there are none.
 */
export const orderDisagreement = amongRanked(within);

/** The disagreements within one ranking. */
function within(panels: RankedTogether): Array<[PanelEntry, OrderDisagreement]> {
  // Read once: who reads a panel's rank may be noted.
  const places = panels.map((panel) => ({
    panel,
    framed: placeIn(panel.rank),
    emitted: placeIn(panel.byEmitted.rank),
  }));
  return places.flatMap((one): Array<[PanelEntry, OrderDisagreement]> => {
    const moved = { behind: [] as PanelEntry[], before: [] as PanelEntry[] };
    for (const other of places) {
      const framed = order(one.framed, other.framed);
      if (framed === 0 || framed !== -order(one.emitted, other.emitted)) continue;
      if (one.framed?.tied.has(other.panel.slug) || one.emitted?.tied.has(other.panel.slug)) continue;
      (framed < 0 ? moved.behind : moved.before).push(other.panel);
    }
    return moved.behind.length + moved.before.length === 0 ? [] : [[one.panel, moved]];
  });
}

interface Place {
  place: number;
  tied: ReadonlySet<string>;
}

/** Undefined without a range: then a panel's uncertainty is not known, and neither is a tie. */
function placeIn(rank: PanelEntry['rank']): Place | undefined {
  return rank?.range ? { place: rank.place, tied: new Set(rank.tiedWith) } : undefined;
}

/** Negative where one comes before the other as they stand, positive where it comes behind, 0 where neither is told. */
function order(one: Place | undefined, other: Place | undefined): number {
  return one && other ? Math.sign(one.place - other.place) : 0;
}

import type { Ledger, PanelEntry } from './ledger.ts';

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
export function orderDisagreement(panel: PanelEntry, ledger: Ledger): OrderDisagreement | undefined {
  const groups = ledger.classes.flatMap((it) => it.groups);
  const others = groups.find((it) => it.panels.includes(panel))?.panels ?? [];
  const [byFrame, byEmitted] = [orderFrom(panel.rank), orderFrom(panel.byEmitted.rank)];
  const moved = others.flatMap((other) => {
    const [framed, emitted] = [byFrame(other.rank), byEmitted(other.byEmitted.rank)];
    return framed !== 0 && framed === -emitted ? [{ other, isBehind: emitted > 0 }] : [];
  });
  if (moved.length === 0) return undefined;
  return {
    behind: moved.filter((it) => it.isBehind).map((it) => it.other),
    before: moved.filter((it) => !it.isBehind).map((it) => it.other),
  };
}

/** Of a panel's rank: -1 where it comes before another, 1 where it comes behind, 0 where the readings do not tell. */
function orderFrom(one: PanelEntry['rank']): (other: PanelEntry['rank']) => -1 | 0 | 1 {
  const tied = new Set(one?.tiedWith);
  return (other) => {
    // Without its range a panel's uncertainty is not known, and neither is a tie.
    if (!one?.range || !other?.range || one.place === other.place || tied.has(other.panel)) return 0;
    return one.place < other.place ? -1 : 1;
  };
}

import { isTie, ratioTo } from '../difference.ts';
import type { Contender } from './ranking.ts';

/** What the frontier compares. */
export interface PricedPower {
  panel: string;
  /** Base currency. */
  price: number;
  /** Optical power, W. */
  power: number;
}

/**
 * Panels that no other beats on both price and power: none is at most as expensive and at least as strong, and
 * better in one of the two. Equal offers stand together. Ordered by price.
 *
 * Pareto's definition (from memory). Values as they stand are compared, not intervals.
 */
export function frontier<T extends PricedPower>(offers: readonly T[]): T[] {
  const sorted = [...offers].sort(
    (a, b) => a.price - b.price || b.power - a.power || a.panel.localeCompare(b.panel, 'en'),
  );
  const best: T[] = [];
  for (const offer of sorted) {
    const last = best.at(-1);
    const stronger = !last || offer.power > last.power;
    const equal = last && offer.price === last.price && offer.power === last.power;
    if (stronger || equal) best.push(offer);
  }
  return best;
}

/**
 * Panels off the frontier that could be on it: each panel that beats them is one that the readings do
 * not tell from them in power (`ratioTo`). Errors that two panels share cancel in the ratio.
 *
 * @param contenders measured under the same conditions
 * @returns the panels' ids, cheapest first
 */
export function closeToFrontier(contenders: readonly Contender[]): string[] {
  const on = new Set(
    frontier(contenders.map((it) => ({ panel: it.panel, price: it.price, power: it.power.value }))).map(
      (it) => it.panel,
    ),
  );
  return contenders
    .filter((it) => !on.has(it.panel))
    .filter((it) =>
      contenders
        .filter((other) => other.price <= it.price && other.power.value >= it.power.value && other.panel !== it.panel)
        .every((other) => isTie(ratioTo(it.power, other.power))),
    )
    .toSorted((a, b) => a.price - b.price || a.panel.localeCompare(b.panel, 'en'))
    .map((it) => it.panel);
}

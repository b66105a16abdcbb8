import { type Difference, ratioMissing, ratioOf } from '../difference.ts';
import type { Figure } from '../figure.ts';
import { errorShares } from '../shared-errors.ts';

/** A price, which is exact, and what is had for it. */
export interface Cost {
  /** Base currency. */
  price: number;
  power: Figure;
}

/** What a watt costs, base currency a W: of a panel, or of what one panel gives beyond another. */
export function pricePerWatt(price: number, watts: number): number {
  return price / watts;
}

/**
 * Ratio of what a watt costs to what another one's costs, with its 95 % interval, from the errors of the two powers. What
 * panels are ranked by, held against each other: the one way in which a tie in a ranking is told.
 */
export function costRatio(cost: Cost, other: Cost): Difference {
  const missing = ratioMissing(other.power, cost.power);
  if (missing) return { kind: 'unknown', reason: missing };
  const [own, others] = errorShares([cost.power, other.power]);
  const ratio = pricePerWatt(cost.price, cost.power.value) / pricePerWatt(other.price, other.power.value);
  // The more expensive watt is the one of less power: the errors change places.
  return ratioOf(ratio, others, own);
}

import { isTie, ratioTo } from '../difference.ts';
import type { Contender } from './ranking.ts';
import { type StepUp, stepUpFigures } from './step-ups.ts';

/** The most light that a sum of money buys among some panels. */
export interface MostLight {
  /** The strongest panel for no more than the sum; the cheaper of two that are equally strong. */
  best: Contender;
  /** Affordable panels whose power the readings do not tell from the best one's, cheapest first. */
  asGood: Contender[];
}

/** What a sum of money buys among panels that were measured alike. */
export interface PurchaseAnswer extends MostLight {
  /** The cheapest stronger panel just beyond the sum whose extra watts cost less each than the best one's own. */
  stepUp?: StepUp;
}

/** A step up is told of up to this share over the sum: our own choice. */
export const LITTLE_MORE = 0.5;

/**
 * Finds the most light for a sum.
 *
 * @param contenders measured under the same conditions; that is the caller's to see to
 * @param sum base currency
 * @returns undefined where no panel costs so little
 */
export function mostLight(contenders: readonly Contender[], sum: number): MostLight | undefined {
  const affordable = contenders
    .filter((it) => it.price <= sum)
    .toSorted((a, b) => b.power.value - a.power.value || a.price - b.price || a.panel.localeCompare(b.panel, 'en'));
  const [best, ...others] = affordable;
  if (!best) return undefined;
  return {
    best,
    asGood: others
      .filter((it) => isTie(ratioTo(it.power, best.power)))
      .toSorted((a, b) => a.price - b.price || a.panel.localeCompare(b.panel, 'en')),
  };
}

/** The same, with the step up from it. */
export function purchaseAnswer(
  contenders: readonly Contender[],
  sum: number,
  baseCurrency: string,
): PurchaseAnswer | undefined {
  const found = mostLight(contenders, sum);
  if (!found) return undefined;
  const beyond = contenders.filter((it) => it.price > sum && it.price <= (1 + LITTLE_MORE) * sum);
  const [stepUp] = stepUpFigures(found.best, beyond, baseCurrency).toSorted((a, b) => a.extraPrice - b.extraPrice);
  return { ...found, ...(stepUp && { stepUp }) };
}

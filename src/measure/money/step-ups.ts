import { isTie, ratioTo } from '../difference.ts';
import type { Figure } from '../figure.ts';
import { methodReference } from '../method-versions.ts';
import { number } from '../numbers.ts';
import { exactOver, linearFigure } from '../uncertainty.ts';
import { pricePerWatt } from './cost.ts';
import type { Contender } from './ranking.ts';

/** A larger panel whose extra watts cost less each than the smaller panel's own. */
export interface StepUp {
  panel: string;
  /** Base currency; negative where the larger panel is cheaper. */
  extraPrice: number;
  /** W, with its uncertainty. */
  extraPower: Figure;
  /** Base currency a W; null where the larger panel costs no more: then there is no price to an extra watt. */
  extraPricePerWatt: Figure | null;
}

/** Which step-ups a panel has. */
export interface StepUps {
  /** Larger panels, the lowest price of an extra watt first. */
  best: readonly string[];
  /** Further panels with a higher price of an extra watt, still below the panel's own; not looked at closely. */
  more: number;
}

/** Step-ups that are told of one panel; further ones are only counted. */
const MOST = 10;

/**
 * Larger panels whose extra watts cost less each than the panel's own: (C_B - C_A) / (P_B - P_A) < C_A / P_A.
 * A panel counts as larger where the readings tell that it is: the 95 % interval of the ratio of the two powers lies
 * above 1; errors that both share cancel in it. A panel of unknown uncertainty is taken at its value.
 *
 * Panels must have been measured under the same conditions; that is the caller's to see to.
 */
export function stepUps(from: Contender, others: readonly Contender[]): StepUps {
  const ownPerWatt = pricePerWatt(from.price, from.power.value);
  const candidates: Array<{ to: Contender; extraWatt: number }> = [];
  for (const to of others) {
    if (to.panel === from.panel || to.power.value <= from.power.value) continue;
    const extraWatt = pricePerWatt(to.price - from.price, to.power.value - from.power.value);
    if (extraWatt < ownPerWatt) candidates.push({ to, extraWatt });
  }
  candidates.sort((a, b) => a.extraWatt - b.extraWatt || a.to.panel.localeCompare(b.to.panel, 'en'));
  const best: string[] = [];
  let looked = 0;
  for (const { to } of candidates) {
    if (best.length === MOST) break;
    looked++;
    // A difference that the readings do not tell is no step up.
    if (isTie(ratioTo(to.power, from.power))) continue;
    best.push(to.panel);
  }
  return { best, more: candidates.length - looked };
}

/** A panel's step-ups with their figures, the best first. */
export function stepUpFigures(from: Contender, others: readonly Contender[], baseCurrency: string): StepUp[] {
  const byName = new Map(others.map((it) => [it.panel, it]));
  return stepUps(from, others).best.flatMap((panel) => {
    const to = byName.get(panel);
    return to ? [stepUp(from, to, baseCurrency)] : [];
  });
}

/** What the step from a panel to a larger one costs and brings. */
export function stepUp(from: Contender, to: Contender, baseCurrency: string): StepUp {
  const id = `${from.panel}/step-up/${to.panel}`;
  const extraPrice = to.price - from.price;
  const extraPower = linearFigure(
    {
      id: `${id}/power`,
      metric: 'step-up-power',
      unit: 'W',
      basis: 'derived',
      method: methodReference('step-up'),
      lowest: Number.NEGATIVE_INFINITY,
      calculation: `${number(to.power.value)} W − ${number(from.power.value)} W = ${number(to.power.value - from.power.value)} W`,
    },
    [
      { figure: to.power, sensitivity: 1 },
      { figure: from.power, sensitivity: -1 },
    ],
  );
  if (extraPrice <= 0) return { panel: to.panel, extraPrice, extraPower, extraPricePerWatt: null };
  const extraPricePerWatt = exactOver(
    {
      id: `${id}/price-per-watt`,
      metric: 'step-up',
      unit: 'currency/W',
      basis: 'derived',
      method: methodReference('step-up'),
      calculation: `${number(extraPrice, 7)} ${baseCurrency} ÷ ${number(extraPower.value)} W = ${number(pricePerWatt(extraPrice, extraPower.value))} ${baseCurrency}/W`,
    },
    extraPrice,
    extraPower,
  );
  return { panel: to.panel, extraPrice, extraPower, extraPricePerWatt };
}

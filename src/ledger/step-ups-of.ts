import { isFigure } from '../measure/figure.ts';
import type { Contender } from '../measure/money/ranking.ts';
import { type StepUp, stepUp } from '../measure/money/step-ups.ts';
import type { Ledger, PanelEntry } from './ledger.ts';

/**
 * A panel's step-ups with their figures, the best first. They are worked out when they are asked for: with their budgets,
 * those of all panels would be a fifth of the ledger.
 */
export function stepUpsOf(panel: PanelEntry, { panels, guide }: Ledger): StepUp[] {
  return panel.stepUps.best.map((slug) => stepUp(contenderOf(panel), contenderOf(panels.get(slug)), guide.currency));
}

/** A panel with step-ups, or one that is stepped up to, has been ranked. */
function contenderOf(panel: PanelEntry | undefined): Contender {
  const [price, power] = (['real-price', 'optical-power'] as const).map((it) => panel?.figures.get(it));
  if (!panel || !isFigure(price) || !isFigure(power)) throw new Error('a step-up between panels that are not ranked');
  return { panel: panel.slug, price: price.value, power };
}

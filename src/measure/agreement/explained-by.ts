import type { BudgetComponent } from '../figure.ts';

/** An error of a budget that would explain a difference. */
export interface Explanation {
  component: BudgetComponent;
  /** How many of its standard uncertainties it would have to be off by, alone. */
  times: number;
}

/**
 * The error of a figure's own budget that needs to be off by the fewest of its standard uncertainties for a difference to
 * come from it alone: the largest component. Nothing without a budget.
 *
 * @param difference in the figure's unit
 */
export function explainedBy(budget: readonly BudgetComponent[], difference: number): Explanation | undefined {
  const [largest] = budget.toSorted((a, b) => Math.abs(b.contribution) - Math.abs(a.contribution));
  if (!largest || largest.contribution === 0) return undefined;
  return { component: largest, times: Math.abs(difference / largest.contribution) };
}

import { ratioTo } from '../difference.ts';
import type { Figure } from '../figure.ts';
import type { Check } from './check.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** mW/cm² */
    'peak-below-mean': { peak: number; mean: number };
  }
}

/** What rounding of sums may leave between equal values. */
const DUST = 1e-9;

/**
 * A highest value is no less than a mean, but two readings of even light may come out either way: only what their errors
 * leave no doubt of is below. Where these are not known, the values decide.
 */
function isBelow(peak: Figure, mean: Figure): boolean {
  const ratio = ratioTo(peak, mean);
  if (ratio.kind === 'unknown') return peak.value < (1 - DUST) * mean.value;
  return ratio.kind === 'apart' && ratio.value < 1;
}

/** A peak below the mean of the grid. */
export const peakAboveMean: Check = {
  id: 'peak-above-mean',
  run(facts) {
    const peak = facts.figure('peak-irradiance-combined');
    const mean = facts.figure('mean-irradiance');
    if (!peak || !mean || !isBelow(peak, mean)) return [];
    return [
      {
        severity: 'impossible',
        finding: { code: 'peak-below-mean', peak: peak.value, mean: mean.value },
        concerns: ['peak-irradiance-combined', 'mean-irradiance'],
      },
    ];
  },
};

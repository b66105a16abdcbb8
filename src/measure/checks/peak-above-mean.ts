import { ratioTo } from '../difference.ts';
import type { Figure } from '../figure.ts';
import { asShown } from './as-shown.ts';
import type { Check } from './check.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** mW/cm² */
    'peak-below-mean': { peak: number; mean: number };
    /** mW/cm²; `percent` is how far the highest point lies above the peak, of the latter. */
    'peak-below-grid-point': { peak: number; highest: number; percent: number };
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

/** How far a point of the grid may lie above the highest reading of a sweep by chance, as a share of it. Our own choice. */
export const PEAK_TOLERANCE = 0.03;

/** A peak below the mean of the grid, or below a point of it, and so no peak. */
export const peakAboveMean: Check = {
  id: 'peak-above-mean',
  run(facts) {
    const peak = facts.figure('peak-irradiance-combined');
    const mean = facts.figure('mean-irradiance');
    if (!peak || !mean) return [];
    const concerns = ['peak-irradiance-combined', 'mean-irradiance'] as const;
    if (isBelow(peak, mean)) {
      const finding = { code: 'peak-below-mean', peak: peak.value, mean: mean.value } as const;
      return [{ severity: 'impossible', finding, concerns }];
    }
    const highest = Math.max(...facts.gridPoints.flatMap((it) => it ?? []));
    // Points are what the meter showed, and so is the peak that they are held against.
    const shown = asShown(facts, peak);
    const above = highest / shown - 1;
    if (above <= PEAK_TOLERANCE) return [];
    const finding = { code: 'peak-below-grid-point', peak: shown, highest, percent: 100 * above } as const;
    return [{ severity: 'doubt', finding, concerns }];
  },
};

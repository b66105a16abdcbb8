import type { Check } from './check.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** mW/cm² */
    'peak-below-mean': { peak: number; mean: number };
    /** mW/cm²; `percent` is how far the highest point lies above the peak, of the latter. */
    'peak-below-grid-point': { peak: number; highest: number; percent: number };
  }
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
    if (peak.value < mean.value) {
      const finding = { code: 'peak-below-mean', peak: peak.value, mean: mean.value } as const;
      return [{ severity: 'impossible', finding, concerns }];
    }
    const highest = Math.max(...facts.gridPoints.flatMap((it) => it ?? []));
    const above = highest / peak.value - 1;
    if (above <= PEAK_TOLERANCE) return [];
    const finding = { code: 'peak-below-grid-point', peak: peak.value, highest, percent: 100 * above } as const;
    return [{ severity: 'doubt', finding, concerns }];
  },
};

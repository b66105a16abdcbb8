import type { Check } from './check.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** mW/cm² */
    'peak-below-mean': { peak: number; mean: number };
  }
}

/** A peak below the mean of the grid. */
export const peakAboveMean: Check = {
  id: 'peak-above-mean',
  run(facts) {
    const peak = facts.figure('peak-irradiance-combined');
    const mean = facts.figure('mean-irradiance');
    if (!peak || !mean || peak.value >= mean.value) return [];
    return [
      {
        severity: 'impossible',
        finding: { code: 'peak-below-mean', peak: peak.value, mean: mean.value },
        concerns: ['peak-irradiance-combined', 'mean-irradiance'],
      },
    ];
  },
};

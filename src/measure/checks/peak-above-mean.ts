import { type Check, words } from './check.ts';

export const peakAboveMean: Check = {
  id: 'peak-above-mean',
  guards: 'A peak below the mean of the grid.',
  run(facts) {
    const peak = facts.figure('peak-irradiance-combined');
    const mean = facts.figure('mean-irradiance');
    if (!peak || !mean || peak.value >= mean.value) return [];
    return [
      {
        check: 'peak-above-mean',
        severity: 'impossible',
        finding: `The peak, ${words(peak.value)} mW/cm², is below the mean of the grid, ${words(mean.value)} mW/cm²: a highest value can't be. The two were not read at one distance, or one was mistyped.`,
        concerns: ['peak-irradiance-combined', 'mean-irradiance'],
      },
    ];
  },
};

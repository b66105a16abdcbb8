import type { Check } from './check.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** Sum of the modes and both together, mW/cm²; the sum less the latter in % of it, signed. */
    'modes-not-adding-up': { sum: number; combined: number; percent: number };
  }
}

/** Largest difference between the sum of the modes and both together, of the latter. Our own choice. */
export const MODES_TOLERANCE = 0.15;

/** Red and near-infrared that do not add up to both together. */
export const modesAddUp: Check = {
  id: 'modes-add-up',
  run(facts) {
    const combined = facts.figure('peak-irradiance-combined');
    const red = facts.figure('peak-irradiance-red');
    const infrared = facts.figure('peak-irradiance-near-infrared');
    if (!combined || !red || !infrared) return [];
    const sum = red.value + infrared.value;
    const difference = (sum - combined.value) / combined.value;
    if (Math.abs(difference) <= MODES_TOLERANCE) return [];
    return [
      {
        severity: 'doubt',
        finding: { code: 'modes-not-adding-up', sum, combined: combined.value, percent: 100 * difference },
        concerns: ['peak-irradiance-combined', 'peak-irradiance-red', 'peak-irradiance-near-infrared'],
      },
    ];
  },
};

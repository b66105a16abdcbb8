import { type Check, words } from './check.ts';

/** Largest difference between the sum of the modes and both together, of the latter. Our own choice. */
export const MODES_TOLERANCE = 0.15;

export const modesAddUp: Check = {
  id: 'modes-add-up',
  guards: 'Red and near-infrared that do not add up to both together.',
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
        check: 'modes-add-up',
        severity: 'doubt',
        finding: `Red and near-infrared add up to ${words(sum)} mW/cm², ${words(Math.abs(100 * difference))} % ${difference > 0 ? 'above' : 'below'} the ${words(combined.value)} mW/cm² read with both on. Their peaks may lie at different places, or the panel shares its power between channels.`,
        concerns: ['peak-irradiance-combined', 'peak-irradiance-red', 'peak-irradiance-near-infrared'],
      },
    ];
  },
};

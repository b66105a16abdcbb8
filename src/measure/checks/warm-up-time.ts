import { type Check, words } from './check.ts';

/**
 * Seconds. In less no panel has come near its steady output; a bare number is in seconds, so that 20, 45 and 60 typed
 * for minutes all lie below. Our own choice.
 */
export const SHORTEST_WARM_UP = 300;

export const warmUpTime: Check = {
  id: 'warm-up-time',
  guards: 'A warm-up too short for a panel to settle, such as minutes typed without their unit.',
  run({ warmUp }) {
    if (warmUp === undefined || warmUp >= SHORTEST_WARM_UP) return [];
    return [
      {
        check: 'warm-up-time',
        severity: 'doubt',
        finding: `The panel was on for ${words(warmUp)} s before the first reading; under ${words(SHORTEST_WARM_UP / 60)} min it has not settled, and gives more light than later.`,
        hint: `a bare number is in seconds: if minutes were meant, write \`${words(warmUp)} min\``,
        concerns: ['peak-irradiance-combined', 'mean-irradiance', 'optical-power'],
        at: ['session', 'warmUp'],
      },
    ];
  },
};

import type { Check } from './check.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** s */
    'warm-up-short': { warmUp: number; shortest: number };
    'minutes-for-seconds': { value: number };
  }
}

/**
 * Seconds. In less no panel has come near its steady output; a bare number is in seconds, so that 20, 45 and 60 typed
 * for minutes all lie below. Our own choice.
 */
export const SHORTEST_WARM_UP = 300;

/** A warm-up too short for a panel to settle, such as minutes typed without their unit. */
export const warmUpTime: Check = {
  id: 'warm-up-time',
  run({ warmUp }) {
    if (warmUp === undefined || warmUp >= SHORTEST_WARM_UP) return [];
    return [
      {
        severity: 'doubt',
        finding: { code: 'warm-up-short', warmUp, shortest: SHORTEST_WARM_UP },
        hint: { code: 'minutes-for-seconds', value: warmUp },
        concerns: ['peak-irradiance-combined', 'mean-irradiance', 'optical-power'],
        at: ['session', 'warmUp'],
      },
    ];
  },
};

import { CHANNELS, type Channel } from '../modes.ts';
import type { Check, RaisedFlag } from './check.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** Peaks, mW/cm². */
    'combined-below-mode': { combined: number; mode: Channel; alone: number };
  }
}

/** Both channels together giving less than one of them alone. */
export const combinedAboveModes: Check = {
  id: 'combined-above-modes',
  run(facts) {
    const combined = facts.figure('peak-irradiance-combined');
    if (!combined) return [];
    return CHANNELS.flatMap((mode): RaisedFlag[] => {
      const alone = facts.figure(`peak-irradiance-${mode}`);
      if (!alone || alone.value <= combined.value) return [];
      return [
        {
          severity: 'doubt',
          finding: { code: 'combined-below-mode', combined: combined.value, mode, alone: alone.value },
          concerns: ['peak-irradiance-combined', `peak-irradiance-${mode}`],
        },
      ];
    });
  },
};

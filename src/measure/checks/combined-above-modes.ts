import { type Check, words } from './check.ts';

const MODES = [
  ['peak-irradiance-red', 'red'],
  ['peak-irradiance-near-infrared', 'near-infrared'],
] as const;

export const combinedAboveModes: Check = {
  id: 'combined-above-modes',
  guards: 'Both channels together giving less than one of them alone.',
  run(facts) {
    const combined = facts.figure('peak-irradiance-combined');
    if (!combined) return [];
    return MODES.flatMap(([metric, name]) => {
      const mode = facts.figure(metric);
      if (!mode || mode.value <= combined.value) return [];
      return [
        {
          check: 'combined-above-modes',
          severity: 'doubt' as const,
          finding: `With both channels on the peak is ${words(combined.value)} mW/cm², below ${words(mode.value)} mW/cm² with ${name} alone. The panel may limit its power with both on; otherwise a reading was mistyped.`,
          concerns: ['peak-irradiance-combined', metric],
        },
      ];
    });
  },
};

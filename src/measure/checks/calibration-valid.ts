import type { Check } from './check.ts';

export const calibrationValid: Check = {
  id: 'calibration-valid',
  guards: 'A meter whose calibration had run out on the day of the session.',
  run: ({ calibrations, sessionDate }) =>
    calibrations
      .filter((it) => it.due < sessionDate)
      .map((it) => ({
        check: 'calibration-valid',
        severity: 'doubt' as const,
        finding: `The calibration of the ${it.instrument} ran out on ${it.due}, before the session of ${sessionDate}. Its stated uncertainty may no longer hold.`,
        concerns: [...it.reads],
        isNotHandedOn: true as const,
      })),
};

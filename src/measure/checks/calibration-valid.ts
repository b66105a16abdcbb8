import type { Check, RaisedFlag } from './check.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** Days, `YYYY-MM-DD`. */
    'calibration-run-out': { instrument: string; due: string; session: string };
  }
}

/** An instrument whose calibration had run out on the day of its readings. */
export const calibrationValid: Check = {
  id: 'calibration-valid',
  run: ({ calibrations }) =>
    calibrations
      .filter((it) => it.due < it.readOn)
      .map(
        ({ instrument, readOn, due, reads }): RaisedFlag => ({
          severity: 'doubt',
          finding: { code: 'calibration-run-out', instrument, due, session: readOn },
          concerns: [...reads],
          isNotHandedOn: true,
        }),
      ),
};

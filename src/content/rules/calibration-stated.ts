import { fields, problemAt } from '../read/fields.ts';
import { calibrationsOf } from './calibrations.ts';
import type { Rule } from './rule.ts';

/** A calibration that promises no error at all is none: every instrument has one. */
export const calibrationStated: Rule = {
  id: 'calibration-stated',
  run: ({ instruments }) =>
    [...instruments.values()].flatMap((source) =>
      calibrationsOf(source).flatMap(({ path, value }) => {
        const [relative] = fields(value, ['relative'], path);
        const absolute = fields(value, ['absolute'])[0]?.value ?? 0;
        if (relative?.value !== 0 || absolute !== 0) return [];
        return [
          problemAt(
            source,
            relative,
            'the uncertainty that the certificate states: relative in %, absolute in the unit of the display, or both',
            'no calibration is exact; where nothing is stated, take what the meter’s maker promises',
          ),
        ];
      }),
    ),
};

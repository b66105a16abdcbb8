import { fields, problemAt } from '../read/fields.ts';
import { INSTRUMENT_KINDS } from '../schema/instrument.ts';
import { calibrationsOf } from './calibrations.ts';
import type { Rule } from './rule.ts';

const DAY = /^\d{4}-\d{2}-\d{2}$/;

/** A session can't rest on a calibration that had not been done yet. */
export const sessionAfterCalibration: Rule = {
  id: 'session-after-calibration',
  run: ({ panels, instruments }, { today }) => {
    const first = new Map(
      [...instruments].map(([id, source]) => {
        const days = calibrationsOf(source)
          .flatMap(({ value }) => fields(value, ['date']))
          .flatMap(({ value }) => (typeof value === 'string' && DAY.test(value) ? [value] : []));
        return [id, days.toSorted()[0]] as const;
      }),
    );
    return [...panels.values()].flatMap((panel) =>
      fields(panel.data, ['sessions', '*']).flatMap(({ path, value }) => {
        const day = fields(value, ['date'])[0]?.value;
        if (typeof day !== 'string' || !DAY.test(day)) return [];
        return INSTRUMENT_KINDS.flatMap((kind) =>
          fields(value, ['instruments', kind], path).flatMap((it) =>
            typeof it.value === 'string' ? [{ path: it.path, value: it.value }] : [],
          ),
        ).flatMap((field) => {
          const from = first.get(field.value);
          // A calibration that lies ahead is a problem of its own file.
          if (from === undefined || from <= day || from > today) return [];
          const wanted = `a meter that was calibrated by the day of the session, ${day}; this one first was on ${from}`;
          return [
            problemAt(
              panel,
              field,
              wanted,
              `correct one of the two days, or add the earlier calibration to ${instruments.get(field.value)?.file}`,
            ),
          ];
        });
      }),
    );
  },
};

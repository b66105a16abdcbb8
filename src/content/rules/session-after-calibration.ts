import { z } from 'zod';
import { fields, problemAt } from '../read/fields.ts';
import { INSTRUMENT_KINDS, type InstrumentKind } from '../schema/instrument.ts';
import { calibrationsFor } from './calibrations.ts';
import type { Rule } from './rule.ts';

/** A day that there is: what else is wrong with one is a problem of its own. */
const isDay = (value: unknown): value is string => z.iso.date().safeParse(value).success;

/** A session can't rest on a calibration that had not been done yet. */
export const sessionAfterCalibration: Rule = {
  id: 'session-after-calibration',
  run: ({ panels, instruments }, { today }) => {
    const first = (id: string, kind: InstrumentKind) =>
      calibrationsFor(instruments.get(id), kind)
        .flatMap(({ value }) => fields(value, ['date']))
        .flatMap(({ value }) => (isDay(value) ? [value] : []))
        .toSorted()[0];
    return [...panels.values()].flatMap((panel) =>
      fields(panel.data, ['sessions', '*']).flatMap(({ path, value }) => {
        const day = fields(value, ['date'])[0]?.value;
        if (!isDay(day)) return [];
        return INSTRUMENT_KINDS.flatMap((kind) =>
          fields(value, ['instruments', kind], path).flatMap((it) =>
            typeof it.value === 'string' ? [{ path: it.path, value: it.value, kind }] : [],
          ),
        ).flatMap(({ kind, ...field }) => {
          const from = first(field.value, kind);
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

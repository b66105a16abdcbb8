import { z } from 'zod';
import { count, isoDate, number, prose, refuse } from './fields.ts';

/** One calibration of an instrument; recalibrating adds one, and leaves what rests on the others as it was. */
const calibration = z.strictObject({
  date: isoDate('Day of the calibration; it counts for sessions from that day on, until the next one.', '2026-02-12'),
  validMonths: count('Months until the next one is due.', 120, 24),
  relative: number('Expanded uncertainty relative to the reading, in %.', { min: 0, max: 100 }, 4),
  absolute: number('Expanded absolute uncertainty, in the unit of the display.', { min: 0 }, 0.2).default(0),
  coverageFactor: number('Coverage factor k of the two figures above.', { positive: true, max: 5 }, 2).default(2),
  reference: prose('Against what, and by whom in general terms.', 'Maker’s certificate, lamp standard'),
});

export type Calibration = z.output<typeof calibration>;

/** Every calibration of one quantity of an instrument. */
export const calibrations = z
  .array(calibration)
  .min(1)
  .superRefine((list, context) => {
    list.forEach(({ date }, i) => {
      if (list.findIndex((it) => it.date === date) === i) return;
      const wanted = 'one calibration a day: a session could not tell which of the two to take';
      refuse(context, { wanted }, [i, 'date']);
    });
  })
  .describe('Every calibration of the meter, in any order; a session takes the newest one of its day or before.');

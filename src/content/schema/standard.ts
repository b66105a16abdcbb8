import { z } from 'zod';
import { fileReference, isoDate, prose, quantity, refuse, text } from './fields.ts';
import { INSTRUMENT_KINDS } from './instrument-kinds.ts';

/** A value of whatever the instrument reads; which quantity that is, its file says (rules/standard-readings.ts). */
const value = z
  .union([z.number(), z.string().regex(/\d/)], { error: () => 'a number, or a text with its unit' })
  .describe('What the meter showed: a number in the unit that sessions use for it, or a text with its unit.');

const repeat = z.union([
  value,
  z.strictObject({ value, struck: prose('Why it does not count.') }).describe('A reading that was rejected.'),
]);

const reading = z.strictObject({
  date: isoDate('Day of the reading; sessions of that day join to it by the day alone.'),
  value: z
    .union([repeat, z.array(repeat).min(1)])
    .describe(
      'A reading, a list of repeats (the day counts as their mean), or { value, struck } for one that was rejected.',
    ),
  note: prose('What was odd on that day, for readers.').optional(),
});

const restart = z.strictObject({
  date: isoDate('First day on which the new limits count; readings of that day belong to them.'),
  reason: prose('Why: the meter was adjusted, the lamp has a new driver.'),
});

/** Fewer first readings say next to nothing of the scatter: our own choice. */
export const FEWEST_FIRST = 5;
const USUAL_FIRST = 10;
const USUAL_DAYS = 7;

/** content/standards/<id>.yaml: a lamp or panel that is kept aside and read at each session, to see whether the bench holds. */
export const standardSchema = z
  .strictObject({
    name: text('What the bench calls it; an invented or generic name, never a brand.'),
    what: prose('What it is, how it is kept and how it is run: driver, current, warm-up.'),
    instrument: fileReference('The meter that reads it: a file name in content/instruments without its ending.'),
    reads: z.enum(INSTRUMENT_KINDS).optional().describe('Which of its quantities, where the meter reads several.'),
    distance: quantity('length', 'Distance from it to the sensor, the same each time.', {
      min: 0,
      max: 1000,
    }).optional(),
    limitsFrom: z
      .int()
      .min(FEWEST_FIRST)
      .max(100)
      .default(USUAL_FIRST)
      .describe(
        `How many first days set the control limits, and again after each restart: ${FEWEST_FIRST} at least, better 20.`,
      ),
    nearDays: z
      .int()
      .min(0)
      .max(92)
      .default(USUAL_DAYS)
      .describe(
        'A session without a reading of its own day takes the nearest one of so many days before or after; 0 takes its own day alone.',
      ),
    readings: z.array(reading).min(1).describe('One entry a day, in any order.'),
    restarts: z
      .array(restart)
      .default([])
      .describe(
        'Days from which the limits are set anew, each with its reason; a step of the readings is expected there.',
      ),
    note: prose('Anything else worth knowing.').optional(),
  })
  .superRefine(({ readings, restarts }, context) => {
    readings.forEach(({ date }, i) => {
      if (readings.findIndex((it) => it.date === date) === i) return;
      const wanted = 'one entry a day';
      refuse(context, { wanted, hint: 'write the repeats of a day as a list: value: [41.2, 41.4]' }, [
        'readings',
        i,
        'date',
      ]);
    });
    const first = readings.map((it) => it.date).toSorted()[0] ?? '';
    restarts.forEach(({ date }, i) => {
      const place = ['restarts', i, 'date'];
      if (restarts.findIndex((it) => it.date === date) !== i) refuse(context, { wanted: 'one restart a day' }, place);
      else if (date <= first) {
        refuse(context, { wanted: `a day after the first reading, ${first}: the limits start with it anyway` }, place);
      }
    });
  })
  .describe('A check standard: one steady thing that is read over and over.');

export type StandardFile = z.output<typeof standardSchema>;

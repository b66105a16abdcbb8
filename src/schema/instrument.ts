import { z } from 'zod';
import { isoDate, text } from './fields.ts';

/** What an instrument reads; a session names one instrument for each that it used. */
export const INSTRUMENT_KINDS = [
  'irradiance',
  'spectrum',
  'mains',
  'magnetic',
  'electric',
  'radio',
  'sound',
  'flicker',
  'length',
  'temperature',
] as const;

export type InstrumentKind = (typeof INSTRUMENT_KINDS)[number];

/** content/instruments/<id>.yaml: one meter of the bench. Percentages are of the reading. */
export const instrumentSchema = z
  .strictObject({
    name: text('What the bench calls it; an invented or generic name, never a brand.'),
    measures: z.enum(INSTRUMENT_KINDS).describe('What it reads.'),
    unit: text('Unit of its display, in which range, resolution and absolute uncertainty are given.'),
    range: z
      .strictObject({
        from: z.number().describe('Lowest reading, in the unit of the display.'),
        to: z.number().describe('Highest reading, in the unit of the display.'),
      })
      .refine((range) => range.to > range.from, { error: 'a range whose end is above its start' })
      .describe('Range of the display, in its unit.'),
    response: text(
      'What it responds to: wavelengths, frequencies, weighting, sensor and its angular response, in words.',
    ),
    resolution: z.number().min(0).describe('Smallest step of the display, in its unit.'),
    calibration: z
      .strictObject({
        date: isoDate('Day of the calibration.'),
        validMonths: z.int().positive().max(120).describe('Months until the next one is due.'),
        relative: z.number().min(0).max(100).describe('Expanded uncertainty relative to the reading, in %.'),
        absolute: z.number().min(0).default(0).describe('Expanded absolute uncertainty, in the unit of the display.'),
        coverageFactor: z.number().positive().max(5).default(2).describe('Coverage factor k of the two figures above.'),
        reference: text('Against what, and by whom in general terms.'),
      })
      .describe('Last calibration and what it promises.'),
    angularResponse: z
      .number()
      .min(0)
      .max(50)
      .optional()
      .describe('Standard uncertainty from oblique light near a panel, in % of the reading.'),
    repeatability: z
      .number()
      .min(0)
      .max(50)
      .optional()
      .describe(
        'Standard deviation of repeated readings of one steady thing, in % of the reading; used where a session has no repeats.',
      ),
    note: text('Anything else worth knowing.').optional(),
  })
  .describe('One meter of the bench.');

export type Instrument = z.output<typeof instrumentSchema>;

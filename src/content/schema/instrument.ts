import { z } from 'zod';
import { isoDate, quantity, refuse, text } from './fields.ts';
import { REPLACED } from './replaced.ts';

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

/** One calibration of an instrument; recalibrating adds one, and leaves what rests on the others as it was. */
const calibration = z.strictObject({
  date: isoDate('Day of the calibration; it counts for sessions from that day on, until the next one.'),
  validMonths: z.int().positive().max(120).describe('Months until the next one is due.'),
  relative: z.number().min(0).max(100).describe('Expanded uncertainty relative to the reading, in %.'),
  absolute: z.number().min(0).default(0).describe('Expanded absolute uncertainty, in the unit of the display.'),
  coverageFactor: z.number().positive().max(5).default(2).describe('Coverage factor k of the two figures above.'),
  reference: text('Against what, and by whom in general terms.'),
});

export type Calibration = z.output<typeof calibration>;

const calibrations = z
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

const ANGULAR_HINT =
  'write f2 of ISO/CIE 19476, as in { f2: 2.5 }, or the error at some angles, as in { angles: [{ angle: 60 deg, error: 3 }] }';

const angularResponse = z
  .preprocess(
    (value, context) => {
      if (typeof value !== 'number') return value;
      refuse(context, { wanted: 'a block with f2, or with angles', hint: ANGULAR_HINT });
      return z.NEVER;
    },
    z
      .strictObject({
        f2: z
          .number()
          .min(0)
          .max(50)
          .optional()
          .describe('f2 of ISO/CIE 19476 (CIE S 023), in %; it is taken as one standard uncertainty.'),
        angles: z
          .array(
            z.strictObject({
              angle: quantity('angle', 'Angle of the light from straight ahead.', { positive: true, max: 89 }),
              error: z
                .number()
                .min(0)
                .max(100)
                .describe('Standard uncertainty (k = 1) for light from that angle, in % of that light.'),
            }),
          )
          .min(1)
          .optional()
          .describe('Errors at named angles; straight ahead there is none.'),
      })
      .superRefine(({ f2, angles }, context) => {
        if ((f2 === undefined) === (angles === undefined)) {
          refuse(context, { wanted: 'either f2 or angles, one of the two', hint: ANGULAR_HINT });
        }
        angles?.forEach(({ angle }, i) => {
          if (angles.findIndex((it) => it.angle.value === angle.value) === i) return;
          refuse(context, { wanted: 'one error an angle' }, ['angles', i, 'angle']);
        });
      }),
  )
  .describe('How oblique light is misread: f2, or errors at named angles. For irradiance only.');

const bandError = (band: string) =>
  z
    .number()
    .min(0)
    .max(50)
    .optional()
    .describe(`Standard uncertainty (k = 1) in the ${band} band, in % of the reading.`);

/** content/instruments/<id>.yaml: one instrument of the bench. Percentages are of the reading. */
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
    resolution: z.number().min(0).describe('Resolution: the smallest step of the display, in its unit.'),
    calibrations,
    spectralResponse: z
      .strictObject({ red: bandError('red'), nearInfrared: bandError('near-infrared') })
      .refine((it) => it.red !== undefined || it.nearInfrared !== undefined, {
        error: 'red, nearInfrared or both',
      })
      .optional()
      .describe(
        'How far it may misread a band because its sensor does not answer to every wavelength alike; beyond what its calibration covers. For irradiance only.',
      ),
    angularResponse: angularResponse.optional(),
    repeatability: z
      .number()
      .min(0)
      .max(50)
      .optional()
      .describe(
        'Standard deviation of repeated readings of one steady thing, in % of the reading; used where a session has no repeats.',
      ),
    repeatabilityDecibels: z
      .number()
      .min(0)
      .max(20)
      .optional()
      .describe('The same in dB; for sound only, where a share of the reading means nothing.'),
    note: text('Anything else worth knowing.').optional(),
  })
  .describe('One meter of the bench.')
  .register(REPLACED, {
    calibration: {
      by: 'calibrations',
      hint: 'write a list, so that earlier sessions keep theirs: calibrations:, and below it each one as - { date: 2026-01-15, validMonths: 24, relative: 4, reference: ... }',
    },
  });

export type InstrumentFile = z.output<typeof instrumentSchema>;

import { z } from 'zod';
import { number, quantity, refuse } from './fields.ts';

const ANGULAR_HINT =
  'write f2 of ISO/CIE 19476, as in { f2: 2.5 }, or the error at some angles, as in { angles: [{ angle: 60 deg, error: 3 }] }';

/** How a sensor of light misreads what comes from the side. */
export const angularResponse = z
  .preprocess(
    (value, context) => {
      if (typeof value !== 'number') return value;
      refuse(context, { wanted: 'a block with f2, or with angles', hint: ANGULAR_HINT });
      return z.NEVER;
    },
    z
      .strictObject({
        f2: number(
          'f2 of ISO/CIE 19476 (CIE S 023), in %; it is taken as one standard uncertainty.',
          { min: 0, max: 50 },
          2.5,
        ).optional(),
        angles: z
          .array(
            z.strictObject({
              angle: quantity(
                'angle',
                'Angle of the light from straight ahead.',
                { positive: true, max: 89 },
                '60 deg',
              ),
              error: number(
                'Standard uncertainty (k = 1) for light from that angle, in % of that light.',
                { min: 0, max: 100 },
                3,
              ),
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
      })
      .meta({ oneOf: [{ required: ['f2'] }, { required: ['angles'] }] }),
  )
  .describe('How oblique light is misread: f2, or errors at named angles. For irradiance only.');

const bandError = (band: string, example: number) =>
  number(
    `Standard uncertainty (k = 1) in the ${band} band, in % of the reading.`,
    { min: 0, max: 50 },
    example,
  ).optional();

/** How a sensor of light misreads one of the two bands. */
export const spectralResponse = z
  .strictObject({ red: bandError('red', 1), nearInfrared: bandError('near-infrared', 5) })
  .refine((it) => it.red !== undefined || it.nearInfrared !== undefined, { error: 'red, nearInfrared or both' })
  .meta({
    anyOf: [{ required: ['red'] }, { required: ['nearInfrared'] }],
    description:
      'How far it may misread a band because its sensor does not answer to every wavelength alike; beyond what its calibration covers. For irradiance only.',
  });

/** How a broadband meter answers to each wavelength. */
export const responsivity = z
  .strictObject({
    calibratedAt: quantity(
      'wavelength',
      'Wavelength of the light that it was calibrated with.',
      { min: 200, max: 3000 },
      850,
    ),
    relative: number(
      'Standard uncertainty (k = 1) of each response against that at calibratedAt, in %; where it is left out, spectralResponse counts in its place.',
      { min: 0, max: 50 },
      0.3,
    ).optional(),
    points: z
      .array(
        z.strictObject({
          wavelength: quantity('wavelength', 'A wavelength.', { min: 200, max: 20000 }, 660),
          response: number(
            'What the meter answers to it, relative; 1 at each wavelength for a flat one.',
            { min: 0 },
            0.82,
          ),
        }),
      )
      .min(2)
      .describe('Relative spectral responsivity; straight lines are drawn between its points.'),
  })
  .superRefine(({ points, calibratedAt }, context) => {
    points.forEach(({ wavelength }, i) => {
      if (points.findIndex((it) => it.wavelength.value === wavelength.value) === i) return;
      refuse(context, { wanted: 'one response a wavelength' }, ['points', i, 'wavelength']);
    });
    const all = points.map((it) => it.wavelength.value);
    if (calibratedAt.value >= Math.min(...all) && calibratedAt.value <= Math.max(...all)) return;
    refuse(context, { wanted: 'a wavelength within those of its points' }, ['calibratedAt']);
  })
  .describe(
    'Relative spectral responsivity, from its certificate. With the spectrum of a panel its readings are multiplied by what it misreads by that. For irradiance only.',
  );

/** How wide a spectrometer sees a line. */
export const bandwidth = quantity(
  'wavelength',
  'Width at half its height of a narrow line as the spectrometer shows it. For spectra only.',
  { positive: true, max: 100 },
  2,
);

/** How sure a spectrometer is of power. */
export const powerError = number(
  'Standard uncertainty (k = 1) of its spectral irradiance, in %, where it is calibrated in power, or in the shape of spectra. For spectra only.',
  { positive: true, max: 50 },
  3.5,
);

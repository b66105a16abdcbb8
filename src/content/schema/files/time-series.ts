import { z } from 'zod';
import { number, quantity, text } from '../fields.ts';
import { fileEntry } from './file-entry.ts';

/** Endings of logs as meters write them. */
export const SERIES_ENDINGS = ['.csv', '.tsv', '.txt', '.log', '.dat'];

/** What can be said of any log. */
const ofLog = {
  column: text(
    'Heading of the column with the readings, where the file has several that could be; or its number, from 1.',
    'Irradiance',
  ).optional(),
  unit: text('Unit of the readings, where the file does not say it.', 'mW/cm2').optional(),
};

const rate = quantity(
  'frequency',
  'Readings a second, where the file has no column of times.',
  { positive: true, max: 1e9 },
  '10 Hz',
).optional();

/** The mode in which the panel was on. */
const mode = z
  .enum(['red', 'nearInfrared', 'combined'], { error: () => 'red, nearInfrared or combined' })
  .optional()
  .describe('Which channels were on; both, where it is left out.');

/** Sweeps of the sensor over the face of the panel, and grids that were logged in one go. */
export const sweeps = z
  .array(
    fileEntry('A log of irradiance against time while the sensor is moved.', 'sweep-both.csv', SERIES_ENDINGS, {
      mode,
      distance: quantity(
        'length',
        'Distance from the LED plane to the sensor; the session’s where left out. Away from that it gives no peak.',
        { positive: true, max: 1000 },
        '6 in',
      ).optional(),
      grid: z
        .boolean()
        .optional()
        .describe('true where the sensor was set to the points of the grid, one after another, held still at each.'),
      rate,
      ...ofLog,
    }),
  )
  .min(1)
  .describe('Logs of irradiance against time: sweeps of the sensor over the face, or a grid in one go.');

/** The panel's light from cold, with a sensor that is not moved. */
export const warmUpLog = fileEntry(
  'A log of the light from cold: the sensor is not moved, both channels are on.',
  'warm-up.csv',
  SERIES_ENDINGS,
  {
    onFor: quantity(
      'time',
      'How long the panel had been on at the first row; nothing, where left out.',
      { min: 0, max: 86_400 },
      '10 s',
    ).optional(),
    ...ofLog,
  },
);

const waveform = (of: string, example: string) =>
  fileEntry(`A record of the light of ${of} at many thousand readings a second.`, example, SERIES_ENDINGS, {
    rate: quantity(
      'frequency',
      'Readings a second, where the file has no column of times.',
      { positive: true, max: 1e9 },
      '100 kHz',
    ).optional(),
    dark: number(
      'What the sensor shows with the panel off, in the file’s own unit; it is taken off.',
      {},
      0.02,
    ).optional(),
    bandwidth: quantity(
      'frequency',
      'Highest frequency that sensor and amplifier let through. Above half the readings a second the frequency found may be the mirror image of a faster one, and is not told.',
      { positive: true, max: 1e9 },
      '150 kHz',
    ).optional(),
    ...ofLog,
  }).optional();

/** Records of flicker, mode by mode. */
export const waveforms = z
  .strictObject({
    red: waveform('red alone', 'light-red.csv'),
    nearInfrared: waveform('near-infrared alone', 'light-nir.csv'),
    combined: waveform('both channels', 'light-both.csv'),
  })
  .describe('Records of the light, from which depth, index and frequency of flicker come.');

export type SweepEntry = z.output<typeof sweeps>[number];
export type WarmUpLogEntry = z.output<typeof warmUpLog>;
export type WaveformEntry = NonNullable<z.output<typeof waveforms>['combined']>;

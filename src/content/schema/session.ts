import { z } from 'zod';
import { STATED_FREQUENCIES } from '../../measure/exposure/reference-levels.ts';
import { beyondReadings } from './beyond.ts';
import { carriedReadings } from './carried.ts';
import { count, fileReference, isoDate, quantity, text } from './fields.ts';
import { otherFiles } from './files/other-files.ts';
import { soundClips } from './files/sound-clips.ts';
import { spectra } from './files/spectra.ts';
import { sweeps, warmUpLog, waveforms } from './files/time-series.ts';
import { wallPhoto } from './files/wall-photo.ts';
import { INSTRUMENT_KINDS, type InstrumentKind } from './instrument.ts';
import { photoList } from './photo.ts';

const irradiance = (meaning: string, example = 41.2) =>
  quantity('irradiance', meaning, { positive: true, max: 2000 }, example);

/** A reading that the tester rejected: it stays in the file, as `struck`, with the reason. */
export const rejectedReading = z.strictObject({
  value: irradiance('The reading as it was taken.'),
  struck: text('Why it does not count.', 'The hand slipped off the rod'),
});

const gridReading = z.union([irradiance('One reading.'), rejectedReading]);

/** One point of the grid: a reading, or several, any of which may be rejected. */
export const gridPoint = z.union([gridReading, z.array(gridReading).min(1)]);

/** The three ways in which a panel is switched on. */
export const MODE_KEYS = ['red', 'nearInfrared', 'combined'] as const;
export type ModeKey = (typeof MODE_KEYS)[number];

const grid = z.strictObject({
  inset: quantity(
    'length',
    'How far the outer points lie inside the edge of the LED field, on both axes; 1 in is the habit.',
    {
      min: 0,
      max: 100,
    },
    '1 in',
  ).prefault('1 in'),
  rows: z
    .array(z.array(gridPoint).min(1))
    .min(1)
    .describe(
      'Rows of the grid from the top, points from the left as one faces the panel. A point is a reading, a list of repeats, or {value, struck}.',
    ),
});

/** One distance of the sweep: at least one of its three readings stands. */
const sweepEntry = z
  .strictObject({
    distance: quantity('length', 'Distance from the LED plane to the sensor.', { min: 1, max: 1000 }, '30 cm'),
    centre: gridPoint
      .optional()
      .describe(
        'Reading before the middle of the LED field, both channels on: one, a list of repeats, or {value, struck}.',
      ),
    red: gridPoint.optional().describe('The same with red alone on.'),
    nearInfrared: gridPoint
      .optional()
      .describe(
        'The same with near-infrared alone on. With one at the session’s own distance too, it tells what reaches an eye farther away.',
      ),
  })
  .refine((it) => it.centre !== undefined || it.red !== undefined || it.nearInfrared !== undefined, {
    error: 'a reading: centre (both channels on), red or nearInfrared (that channel alone on)',
  })
  .meta({ anyOf: [{ required: ['centre'] }, { required: ['red'] }, { required: ['nearInfrared'] }] });

const perMode = <T extends z.ZodType, E>(
  field: (meaning: string, example?: E) => T,
  what: string,
  examples: Partial<Record<ModeKey, E>> = {},
) => ({
  red: field(`${what} with red alone on.`, examples.red).optional(),
  nearInfrared: field(`${what} with near-infrared alone on.`, examples.nearInfrared).optional(),
  combined: field(`${what} with both channels on.`, examples.combined).optional(),
});

const wavelength = (meaning: string, peak: number, fwhm: number) =>
  z
    .strictObject({
      peak: quantity('wavelength', 'Peak wavelength.', { min: 200, max: 3000 }, peak),
      fwhm: quantity('wavelength', 'Full width at half maximum.', { positive: true, max: 500 }, fwhm).optional(),
    })
    .describe(meaning);

const flicker = (meaning: string) =>
  z
    .strictObject({
      frequency: quantity(
        'frequency',
        'Main frequency of the modulation; leave it out where there is none.',
        { positive: true, max: 1e7 },
        '40 kHz',
      ).optional(),
      percent: quantity('percent', 'Modulation depth (percent flicker).', { min: 0, max: 100, bounds: true }, 1.4),
    })
    .describe(meaning);

const TOO_FAST = {
  wanted: 'a frequency of at most 100 kHz',
  hint: 'above 100 kHz the limits for radio hold as well; leave the frequency out, and say it in the notes',
};

interface FieldLimits {
  min: number;
  max: number;
  /** Examples of what may be written. */
  distance: string;
  off: number | string;
  on: number | string;
}

/** Fields of a block with a reading of the room and one with the panel on. */
const fieldShape = (
  name: 'magnetic' | 'electric' | 'radio' | 'sound',
  { distance, off, on, ...limits }: FieldLimits,
) => ({
  distance: quantity('length', 'Distance from the panel to the meter.', { min: 0, max: 1000 }, distance).optional(),
  off: quantity(
    name,
    'Reading with the panel off (or unplugged): the room.',
    { ...limits, bounds: true },
    off,
  ).optional(),
  on: quantity(name, 'Reading with the panel on, both channels.', { ...limits, bounds: true }, on).optional(),
});

const field = (name: 'radio' | 'sound', meaning: string, limits: FieldLimits) =>
  z.strictObject(fieldShape(name, limits)).describe(meaning);

/** The same for fields whose reference level depends on the frequency. */
const lowFrequencyField = (name: 'magnetic' | 'electric', meaning: string, limits: FieldLimits) =>
  z
    .strictObject({
      ...fieldShape(name, limits),
      frequency: quantity(
        'frequency',
        'Main frequency of the field with the panel on, 25 Hz to 100 kHz, where the meter shows it; left out, the share of the reference level is told for both ends.',
        { min: STATED_FREQUENCIES.from, max: 1e7 },
        '65 kHz',
        STATED_FREQUENCIES.to,
      )
        .refine(({ value }) => value <= STATED_FREQUENCIES.to, {
          error: TOO_FAST.wanted,
          params: TOO_FAST,
        })
        .optional(),
    })
    .describe(meaning);

/** Names that stand in examples. */
const INSTRUMENT_EXAMPLES: Record<InstrumentKind, string> = {
  irradiance: 'bench-thermopile',
  spectrum: 'fibre-spectrometer',
  mains: 'plug-in-wattmeter',
  magnetic: 'three-axis-coil',
  electric: 'field-rod',
  radio: 'radio-probe',
  sound: 'class-2-sound-meter',
  flicker: 'photodiode-sampler',
  length: 'steel-rule',
  temperature: 'room-thermometer',
};

/** One dated bench session of a panel: raw readings only. Anything not read is left out. */
export const sessionSchema = z.strictObject({
  date: isoDate('Day of the session; one session a day.'),
  methodVersion: count(
    'Version of the bench procedure that was followed; 2 asks for readings past the edges (beyond).',
    undefined,
    1,
  ),
  instruments: z
    .strictObject(
      Object.fromEntries(
        INSTRUMENT_KINDS.map((kind) => [
          kind,
          fileReference(
            `Instrument used for: ${kind}. A file name in content/instruments without its ending.`,
            INSTRUMENT_EXAMPLES[kind],
          ).optional(),
        ]),
      ) as Record<(typeof INSTRUMENT_KINDS)[number], z.ZodOptional<z.ZodString>>,
    )
    .default({})
    .describe('Which meter took which readings.'),
  carried: carriedReadings.optional(),
  draft: z
    .boolean()
    .optional()
    .describe(
      'true while readings are still missing: the published guide leaves the session out, check and dev show it.',
    ),
  warmUp: quantity(
    'time',
    'Time from switching on to the first reading; a bare number is in seconds.',
    { min: 0, max: 86400 },
    '30 min',
  ).optional(),
  roomTemperature: quantity('temperature', 'Air temperature at the bench.', { min: -20, max: 60 }, '21.5 C').optional(),
  distance: quantity(
    'length',
    'Distance from the LED plane to the sensor; the guide’s reference distance where left out.',
    { positive: true, max: 1000 },
    '6 in',
  ).optional(),
  peak: z
    .strictObject(
      perMode(irradiance, 'Highest steady reading of a sweep', { red: 27.9, nearInfrared: 26.2, combined: 53.4 }),
    )
    .optional()
    .describe('Peak irradiance per mode.'),
  grid: grid.optional().describe('The grid of readings with both channels on; 3 x 3 is the habit, any size is read.'),
  distances: z
    .array(sweepEntry)
    .min(1)
    .optional()
    .describe(
      'Distance sweep: the irradiance on the axis at two distances or more; it tells how narrow the beams are, and with near-infrared alone what reaches an eye.',
    ),
  beyond: beyondReadings.optional(),
  wavelengths: z
    .strictObject({
      red: wavelength('The red channel alone.', 661, 17).optional(),
      nearInfrared: wavelength('The near-infrared channel alone.', 848, 32.5).optional(),
    })
    .optional()
    .describe('Peak wavelength of each channel.'),
  mains: z
    .strictObject({
      standby: quantity('power', 'Plugged in, all channels off.', { min: 0, max: 20000, bounds: true }, 0.7).optional(),
      ...perMode(
        (meaning, example?: number) => quantity('power', meaning, { positive: true, max: 20000 }, example),
        'Mains draw',
        { red: 52.8, nearInfrared: 53.9, combined: 104.2 },
      ),
    })
    .optional()
    .describe('Draw from the mains.'),
  magnetic: lowFrequencyField('magnetic', 'Magnetic flux density.', {
    ...{ min: 0, max: 1e6 },
    ...{ distance: '6 in', off: '0.05 uT', on: '0.94 uT' },
  }).optional(),
  electric: lowFrequencyField('electric', 'Electric field.', {
    ...{ min: 0, max: 1e5 },
    ...{ distance: '6 in', off: 4, on: 40 },
  }).optional(),
  radio: field('radio', 'Radio-frequency power density.', {
    ...{ min: 0, max: 1e6 },
    ...{ distance: '6 in', off: 0.005, on: 0.007 },
  }).optional(),
  sound: field('sound', 'A-weighted sound level, max hold.', {
    ...{ min: 0, max: 140 },
    ...{ distance: '1 m', off: 31.7, on: 49.7 },
  }).optional(),
  flicker: z
    .strictObject(perMode((meaning) => flicker(meaning), 'Flicker'))
    .optional()
    .describe('Flicker per mode.'),
  hotSpots: text('Judgement of the wall photo, in words.', 'Two faint rings; the middle is even.').optional(),
  photos: photoList({ file: 'wall-at-6-in.jpg', shows: 'Red light on the wall at 6 in' })
    .default([])
    .describe('Pictures taken in the session, such as the wall photo.'),
  wallPhoto: wallPhoto.optional(),
  soundClips: soundClips.optional(),
  spectra: spectra.optional(),
  sweeps: sweeps.optional(),
  warmUpLog: warmUpLog.optional(),
  waveforms: waveforms.optional(),
  otherFiles: otherFiles.optional(),
  notes: text('Anything that happened on the bench.', 'The fan started after ten minutes.').optional(),
});

export type Session = z.output<typeof sessionSchema>;
export type GridPoint = z.output<typeof gridPoint>;

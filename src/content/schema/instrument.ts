import { z } from 'zod';
import { type Calibration, calibrations } from './calibration.ts';
import { number, prose, text } from './fields.ts';
import { instrumentKeywords, reportForm } from './instrument-form.ts';
import { INSTRUMENT_KINDS, INSTRUMENT_QUANTITY, type InstrumentKind, KIND_FIELDS } from './instrument-kinds.ts';
import { unitTextPattern } from './quantity-pattern.ts';
import { REPLACED } from './replaced.ts';
import { angularResponse, bandwidth, powerError, responsivity, spectralResponse } from './sensor-response.ts';
import { QUANTITIES } from './units.ts';

export type { Calibration } from './calibration.ts';
export { INSTRUMENT_KINDS, type InstrumentKind } from './instrument-kinds.ts';

const unit = (example: string) =>
  text('Unit of its display, in which range, resolution and absolute uncertainty are given.', example);

const display = {
  range: z
    .strictObject({
      from: number('Lowest reading, in the unit of the display.', {}, 0.1),
      to: number('Highest reading, in the unit of the display.', {}, 300),
    })
    .refine((range) => range.to > range.from, { error: 'a range whose end is above its start' })
    .describe('Range of the display, in its unit.'),
  response: prose(
    'What it responds to: wavelengths, frequencies, weighting, sensor and its angular response, in words.',
    'Blackened thermopile under a cosine diffuser, flat from 400 nm to 2000 nm',
  ),
  resolution: number('Resolution: the smallest step of the display, in its unit.', { min: 0 }, 0.1),
  calibrations,
};

const errors = {
  spectralResponse: spectralResponse.optional(),
  angularResponse: angularResponse.optional(),
  responsivity: responsivity.optional(),
  bandwidth: bandwidth.optional(),
  powerError: powerError.optional(),
  repeatability: number(
    'Standard deviation of repeated readings of one steady thing, in % of the reading; used where a session has no repeats.',
    { min: 0, max: 50 },
    0.8,
  ).optional(),
  repeatabilityDecibels: number(
    'The same in dB; for sound only, where a share of the reading means nothing.',
    { min: 0, max: 20 },
    0.5,
  ).optional(),
};

/** One quantity of an instrument that reads several: what can be said of its kind, and nothing else. */
function quantityBlock(kind: InstrumentKind) {
  const quantity = INSTRUMENT_QUANTITY[kind];
  const { typed } = QUANTITIES[quantity];
  const shape = {
    unit: unit(typed).meta({ pattern: unitTextPattern(quantity) }),
    ...display,
    response: display.response.optional(),
    calibrations: display.calibrations.optional(),
    ...errors,
  };
  const others = Object.entries(KIND_FIELDS).flatMap(([name, only]) => (only === kind ? [] : [name]));
  const isOfKind = (name: string) => !others.includes(name) && !(kind === 'sound' && name === 'repeatability');
  const fields = Object.fromEntries(Object.entries(shape).filter(([name]) => isOfKind(name)));
  return z.strictObject(fields as typeof shape).describe(`What it says of this quantity: ${kind}.`);
}

const quantities = z
  .strictObject(
    Object.fromEntries(INSTRUMENT_KINDS.map((kind) => [kind, quantityBlock(kind).optional()])) as Record<
      InstrumentKind,
      z.ZodOptional<ReturnType<typeof quantityBlock>>
    >,
  )
  .refine((it) => Object.keys(it).length > 0, { error: `a block for each of: ${INSTRUMENT_KINDS.join(', ')}` })
  .meta({
    minProperties: 1,
    description:
      'For a meter that reads several quantities, in place of measures, unit, range and resolution: a block each. Response and calibrations beside it hold for every block that has none of its own.',
  });

/** An instrument as regards one quantity that it reads. */
export interface InstrumentQuantity {
  /** The instrument's; where it reads several quantities, with the one that is meant. */
  name: string;
  measures: InstrumentKind;
  unit: string;
  range: { from: number; to: number };
  response: string;
  resolution: number;
  calibrations: readonly Calibration[];
  spectralResponse?: z.output<typeof spectralResponse> | undefined;
  angularResponse?: z.output<typeof angularResponse> | undefined;
  responsivity?: z.output<typeof responsivity> | undefined;
  bandwidth?: z.output<typeof bandwidth> | undefined;
  powerError?: number | undefined;
  repeatability?: number | undefined;
  repeatabilityDecibels?: number | undefined;
}

/** One meter of the bench, with each quantity that it reads in full. */
export interface InstrumentFile {
  name: string;
  /** In the order of the kinds. */
  quantities: readonly InstrumentQuantity[];
  /** Its file has a block for each quantity, even if it is one. */
  hasBlocks: boolean;
  note?: string | undefined;
}

const written = z
  .strictObject({
    name: text('What the bench calls it; an invented or generic name, never a brand.', 'Bench thermopile'),
    measures: z.enum(INSTRUMENT_KINDS).optional().describe('What it reads.'),
    unit: unit('mW/cm2').optional(),
    range: display.range.optional(),
    response: display.response.optional(),
    resolution: display.resolution.optional(),
    calibrations: display.calibrations.optional(),
    ...errors,
    quantities: quantities.optional(),
    note: prose('Anything else worth knowing.', 'Slow: four seconds to settle').optional(),
  })
  // Also where a field is wrong, so that all that is missing is said at once.
  .superRefine(reportForm, { when: () => true })
  .meta({ ...instrumentKeywords(), description: 'One meter of the bench.' });

/** content/instruments/<id>.yaml: one instrument of the bench. Percentages are of the reading. */
export const instrumentSchema = written
  .transform(({ name, note, quantities: blocks, measures, ...single }): InstrumentFile => {
    const parts = blocks
      ? INSTRUMENT_KINDS.flatMap((kind) => {
          const block = blocks[kind];
          const { response, calibrations: shared } = single;
          return block ? [{ response, calibrations: shared, ...block, name: `${name} (${kind})`, measures: kind }] : [];
        })
      : [{ ...single, name, measures }];
    // That each field stands in one place or the other has been looked at.
    const read = parts as InstrumentQuantity[];
    return { name, quantities: read, hasBlocks: blocks !== undefined, ...(note !== undefined && { note }) };
  })
  .describe('One meter of the bench.')
  .register(REPLACED, {
    calibration: {
      by: 'calibrations',
      hint: 'write a list, so that earlier sessions keep theirs: calibrations:, and below it each one as - { date: 2026-01-15, validMonths: 24, relative: 4, reference: ... }',
    },
  });

/** What an instrument says of one quantity; undefined where it does not read it. */
export function quantityOf(
  instrument: InstrumentFile | undefined,
  kind: InstrumentKind,
): InstrumentQuantity | undefined {
  return instrument?.quantities.find((it) => it.measures === kind);
}

/** What the calibrations of one quantity go by: the file's name, and the quantity where the file has a block for each. */
export function quantityId(id: string, { hasBlocks }: InstrumentFile, kind: InstrumentKind): string {
  return hasBlocks ? `${id}:${kind}` : id;
}

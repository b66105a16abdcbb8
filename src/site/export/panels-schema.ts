import { z } from 'zod';
import { CARRIED_NAMES } from '../../content/schema/carried.ts';
import { METRICS } from '../../measure/metrics.ts';
import { siteAddress } from '../shared/site-address.ts';
import { DATA_FORMAT } from './panels-json.ts';

/* The form of `data/panels.json`, strict: a field that the file has and this has not fails the test that reads it. */

const day = z.iso.date();
const textRef = z
  .union([z.int().nonnegative(), z.tuple([z.int().nonnegative()], z.string())])
  .describe('A text: its place in `texts`, or the place and what goes, one after another, where the text has #.');
const written = z.strictObject({
  value: z.number(),
  unit: z.string(),
  written: z.string(),
  bound: z.enum(['below', 'above']).optional(),
});
const basis = z.enum(['measured', 'derived', 'modelled', 'claimed']);
const flag = z.strictObject({
  check: z.string(),
  severity: z.enum(['note', 'doubt', 'impossible']),
  from: z.string().nullable(),
});
const more = z.strictObject({
  id: z.string().optional(),
  unit: z.string().optional(),
  basis: basis.optional(),
  method: z.string().optional(),
  method_version: z.int().positive().optional(),
  bound: z.enum(['below', 'above']).optional(),
  uncertainty_absent: textRef.optional(),
  notes: z.int().nonnegative().describe('A place in the panel’s `notes`.').optional(),
  flags: z.array(flag).min(1).optional(),
  carried_over: z.strictObject({ from: z.array(day).min(1), in_part: z.boolean() }).optional(),
});
const numbers = [z.number(), z.number().nullable(), z.number().nullable(), z.number().nullable()] as const;
/** Rows behind the place of the list that names what each is of. */
const listOf = (name: 'figures' | 'readings' | 'limits', row: z.ZodType) =>
  z
    .tuple([z.int().nonnegative()], row)
    .describe(`The place of a list in \`lists.${name}\`, and a row for each of its entries, in their order.`);
const figure = z
  .union([z.tuple([...numbers]), z.tuple([...numbers, more]), z.strictObject({ reason: textRef })])
  .describe('Value, standard uncertainty and both ends of the 95 % interval, and what there is besides; or a gap.');
const figures = listOf('figures', figure);
const kind = z.strictObject({ unit: z.string(), basis, method: z.string(), method_version: z.int().positive() });

const asWritten = z.string().nullable().describe('As it was written; null where that is its value and its unit.');
const reading = z
  .union([
    z.number(),
    z.tuple([z.number().nullable(), asWritten]),
    z.tuple([
      z.number().nullable(),
      asWritten,
      z.strictObject({ bound: z.enum(['below', 'above']).optional(), struck: z.string().optional() }),
    ]),
  ])
  .describe('A value that was written in its unit; or value, as written, and what there is besides.');
const lists = z
  .strictObject({
    figures: z.array(z.array(z.enum(METRICS.map((it) => it.id)))),
    readings: z.array(z.array(z.tuple([z.string(), textRef, z.string().nullable()]))),
    limits: z.array(z.array(z.tuple([z.string(), textRef, textRef, z.string().nullable(), textRef]))),
    instruments: z.array(
      z.record(
        z.string(),
        z.union([z.tuple([z.string(), day.nullable()]), z.tuple([z.string(), day.nullable(), day])]),
      ),
    ),
  })
  .describe('What the rows of a session are of, by places: said once for all sessions with rows of the same.');

const session = z.strictObject({
  date: day,
  distance_cm: z.number().positive(),
  method_version: z.int().positive(),
  reference_conditions: z.boolean(),
  carried_over: z.partialRecord(z.enum(CARRIED_NAMES), day).optional(),
  instruments: z.int().nonnegative().describe('A place in `lists.instruments`.'),
  figures,
  readings: listOf('readings', reading),
  files: z
    .array(
      z.strictObject({
        name: z.string(),
        kind: z.string(),
        path: z.string(),
        bytes: z.int().positive(),
        sha256: z.string().length(64),
        address: z.url(),
      }),
    )
    .min(1)
    .optional(),
  limits: listOf('limits', textRef.nullable()).describe('What was found.'),
  flags: z.array(
    z.strictObject({
      check: z.string(),
      severity: z.enum(['note', 'doubt', 'impossible']),
      text: textRef,
      concerns: z.array(z.string()),
    }),
  ),
  claims: z.array(
    z.strictObject({
      subject: textRef,
      claimed: z.number(),
      unit: z.string(),
      outcome: z.string(),
      text: textRef,
      measured: z.string().nullable(),
      difference: z.number().nullable(),
    }),
  ),
});

const rank = z.strictObject({
  place: z.int().positive(),
  of: z.int().positive(),
  range: z.tuple([z.int().positive(), z.int().positive()]).nullable(),
  tiedWith: z.array(z.int().nonnegative()).describe('Places in `panels`.'),
  rangeAbsent: z.string().optional(),
  alone: z.boolean(),
  in_doubt: z.boolean(),
});

const panel = z.strictObject({
  slug: z.string(),
  address: z.url(),
  maker: z.string(),
  model: z.string(),
  size_class: z.string().nullable(),
  formerly: z.array(z.string()).min(1).optional(),
  obtained: z
    .strictObject({ how: z.enum(['bought', 'lent', 'given']), paidBy: z.string(), note: z.string().optional() })
    .nullable(),
  claimed: z
    .strictObject({
      date: day.optional(),
      wavelengths: z.array(z.strictObject({ peak: written, share: written.optional() })).optional(),
      irradiance: z.strictObject({ value: written, distance: written.optional() }).optional(),
      power: written.optional(),
      beamAngle: written.optional(),
      ledCount: z.int().positive().optional(),
    })
    .nullable(),
  prices: z.array(
    z.strictObject({
      date: day,
      list: z.number().positive().optional(),
      paid: z.number().positive().optional(),
      currency: z.string().length(3),
      discountCode: z.strictObject({ needed: z.boolean(), testerEarns: z.boolean() }),
      link: z.url().optional(),
      paidLink: z.boolean(),
      note: z.string().optional(),
      base: z.strictObject({ value: z.number().positive(), currency: z.string().length(3) }),
    }),
  ),
  rank: rank.nullable(),
  rank_absent: textRef.nullable(),
  rank_by_emitted: rank.nullable(),
  rank_by_emitted_absent: textRef.nullable(),
  frontier: z.enum(['on', 'close']).nullable(),
  step_ups: z.array(z.tuple([z.string(), z.number(), figure, figure.nullable()])),
  figures: figures.optional(),
  sessions: z.array(session),
  notes: z.array(z.array(textRef).min(1)),
});

const standard = z.strictObject({
  name: z.string(),
  what: z.string(),
  instrument: z.string(),
  unit: z.string(),
  distance_cm: z.number().nullable(),
  near_days: z.number(),
  stages: z.array(
    z.strictObject({
      from: day,
      reason: z.string().nullable(),
      limits: z
        .strictObject({
          from_days: z.int().positive(),
          centre: z.number(),
          lower: z.number(),
          upper: z.number(),
          standard_deviation: z.number(),
          mean_moving_range: z.number(),
          moving_range_upper: z.number(),
        })
        .nullish(),
      drift: z
        .strictObject({
          per_year: z.number(),
          interval95: z.tuple([z.number(), z.number()]),
          degrees_of_freedom: z.number(),
        })
        .nullish(),
    }),
  ),
  days: z.array(
    z.strictObject({
      date: day,
      value: z.number().nullable(),
      readings: z.array(z.number()),
      struck: z.array(z.strictObject({ value: z.number(), reason: z.string() })).optional(),
      beyond: z.enum(['above', 'below']).optional(),
      note: z.string().optional(),
    }),
  ),
});

const correctedValue = z
  .union([z.string(), z.strictObject({ value: z.number(), interval95: z.tuple([z.number(), z.number()]).nullable() })])
  .nullable()
  .describe('In the unit of the figure; null where there was none; a text where no figure is meant.');
const correction = z.strictObject({
  id: z.string(),
  address: z.url(),
  date: day,
  panel: z.string().nullable(),
  session: day.nullable(),
  method: z.string().nullable(),
  version: z.int().positive().nullable(),
  text: z.strictObject({ from: correctedValue, to: correctedValue }).nullable(),
  figures: z.array(z.strictObject({ id: z.string(), metric: z.string(), from: correctedValue, to: correctedValue })),
  why: z.string(),
});

/** The form of the whole file. */
export const panelsFile = z.strictObject({
  format: z.literal(DATA_FORMAT),
  title: z.string(),
  publisher: z.string(),
  site: z.url(),
  built_for: day.describe('The day that the figures were worked out for; no time of a build.'),
  currency: z.string().length(3),
  reference: z.strictObject({ distance_cm: z.number().positive(), method_version: z.int().positive() }),
  columns: z
    .record(z.string(), z.array(z.string()))
    .describe('What the places of a row, or of an entry in `lists`, hold, by the name of its list.'),
  metrics: z.record(z.string(), kind.extend({ of: z.enum(['panel', 'session']) })),
  step_up_metrics: z.strictObject({ power: kind, 'price-per-watt': kind }),
  limits: z.record(
    z.string(),
    z.strictObject({
      name: z.string(),
      source: z.string(),
      year: z.int(),
      edition: z.string(),
      clause: z.string().optional(),
      standing: z.string(),
      alsoIn: z.string().optional(),
    }),
  ),
  instruments: z.record(z.string(), z.record(day, z.strictObject({ holds_until: day, uncertainty: z.string() }))),
  standards: z.record(z.string(), standard),
  corrections: z.array(correction).describe('The public list of corrections, newest first.'),
  panels: z.array(panel),
  lists,
  texts: z.array(z.string()),
});

/** `data/panels.schema.json`: the same as JSON Schema (draft 2020-12). */
export function panelsSchema(site: string): Record<string, unknown> {
  const { $schema, ...rest } = z.toJSONSchema(panelsFile) as Record<string, unknown>;
  return { $schema, $id: siteAddress('/data/panels.schema.json', site), title: 'Panels of the guide', ...rest };
}

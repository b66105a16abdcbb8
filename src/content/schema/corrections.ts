import { z } from 'zod';
import { METRICS } from '../../measure/metrics.ts';
import { count, fileReference, isoDate, prose, refuse } from './fields.ts';

/** What stands in place of a figure that was withheld, or is now. */
export const NO_FIGURE = 'none';

const stated = (meaning: string, example: number) =>
  z
    .union(
      [
        z.number().meta({ examples: [example] }),
        z
          .strictObject({
            value: z.number().describe('The figure, in the unit that the guide shows it in.'),
            low: z.number().describe('Lower end of its 95 % interval.'),
            high: z.number().describe('Upper end of its 95 % interval.'),
          })
          .refine(({ value, low, high }) => low <= value && value <= high, {
            error: 'an interval that the value lies in',
          }),
        z.string().regex(/\S/),
      ],
      { error: () => `a number, { value, low, high }, ${NO_FIGURE}, or a text where no figure is meant` },
    )
    .describe(meaning);

/** A figure's id among those that there are. */
const metric = (meaning: string) =>
  z.enum(METRICS.map((it) => it.id)).meta({ description: meaning, examples: ['mains-draw-combined'] });

const moved = z.strictObject({
  metric: metric('The figure.'),
  from: stated('What it was before.', 0.13),
  to: stated('What it is since.', 0.12),
});

const correction = z
  .strictObject({
    date: isoDate('Day on which it was corrected.'),
    panel: fileReference('The panel: its folder in content/panels.', 'kelpwright-plover').optional(),
    session: isoDate('Day of the session whose figure it is; of a price or a size there is none.').optional(),
    metric: metric('The figure that was wrong; left out where a text was.').optional(),
    method: fileReference('In place of the panel: a method whose page or formula was wrong.', 'efficiency').optional(),
    version: count(
      'The version of the method that is right; left out where only its text was wrong.',
      undefined,
      2,
    ).optional(),
    from: stated('What stood there: of a figure its value, with low and high its interval; else the words.', 110),
    to: stated('What stands there since.', 120),
    why: prose('How it came about, and how it was found; for readers.', 'A digit was mistyped from the bench sheet.'),
    alsoMoved: z
      .array(moved)
      .min(1)
      .optional()
      .describe('Figures of the same panel and session that moved with it, each with what it was and is.'),
  })
  .superRefine((it, context) => {
    if ((it.panel === undefined) === (it.method === undefined)) {
      refuse(context, { wanted: 'a panel or a method, and not both' }, ['panel']);
    }
    for (const key of ['session', 'metric', 'alsoMoved'] as const) {
      if (it[key] !== undefined && it.panel === undefined)
        refuse(context, { wanted: 'the panel that it is of' }, [key]);
    }
    if (it.version !== undefined && it.method === undefined) {
      refuse(context, { wanted: 'the method that it is of' }, ['version']);
    }
    if (it.alsoMoved && it.metric === undefined) {
      refuse(context, { wanted: 'the figure that they moved with, as metric' }, ['alsoMoved']);
    }
    const figures = [
      ...(it.metric === undefined ? [] : [{ from: it.from, to: it.to, path: [] as PropertyKey[] }]),
      ...(it.alsoMoved ?? []).map(({ from, to }, i) => ({ from, to, path: ['alsoMoved', i] })),
    ];
    for (const { path, ...ends } of figures) {
      for (const end of ['from', 'to'] as const) {
        const value = ends[end];
        if (typeof value !== 'string' || value === NO_FIGURE) continue;
        const hint = 'the unit is that of the figure, and is left out';
        refuse(context, { wanted: `a number, { value, low, high }, or ${NO_FIGURE}`, hint }, [...path, end]);
      }
      if (JSON.stringify(ends.from) === JSON.stringify(ends.to)) {
        refuse(context, { wanted: 'another figure than it was before' }, [...path, 'to']);
      }
    }
  })
  .meta({
    oneOf: [{ required: ['panel'] }, { required: ['method'] }],
    dependentRequired: {
      session: ['panel'],
      metric: ['panel'],
      alsoMoved: ['panel', 'metric'],
      version: ['method'],
    },
  });

/** content/corrections.yaml: what was published wrong, and what is right. Nothing is ever taken out of it. */
export const correctionsSchema = z
  .strictObject({
    corrections: z
      .array(correction)
      .default([])
      .describe('Every correction, in any order; readers see the newest first.'),
  })
  .describe('The public list of corrections.');

export type CorrectionsFile = z.output<typeof correctionsSchema>;
export type Correction = CorrectionsFile['corrections'][number];
export type Stated = Correction['from'];

import { z } from 'zod';
import { quantity, refuse, text } from './fields.ts';
import type { QuantityLimits } from './quantity.ts';
import { quantityPattern } from './quantity-pattern.ts';

/** Edges of the LED field as one faces the panel. */
export const EDGES = ['left', 'right', 'top', 'bottom'] as const;
export type Edge = (typeof EDGES)[number];

/** Irradiance past the edges: a display that stays under its first step gives a bound. */
function faintIrradiance(meaning: string, limits: { min?: number; positive?: boolean }, example?: number) {
  const all: QuantityLimits = { ...limits, max: 2000, bounds: true };
  return quantity('irradiance', meaning, all, example)
    .refine((reading) => reading.bound !== 'above', {
      error: 'an irradiance, or a bound such as <0.1',
      params: {
        wanted: 'an irradiance, or the display’s first step as a bound, such as <0.1',
        hint: 'what goes over the range of one meter is read with another',
      },
    })
    .meta({ pattern: quantityPattern('irradiance', { ...all, bounds: 'below' }) });
}

const ON = 'Reading with both channels on, mW/cm2; <0.1 where the display stays under its first step of 0.1.';

const struck = z.strictObject({
  value: faintIrradiance('The reading as it was taken.', { positive: true }, 9.4),
  struck: text('Why it does not count.', 'A hand was in the way'),
});

const WANTED = 'a reading, a list of repeats, {value, struck}, or a bound such as <0.1';

const onReading = z.union([faintIrradiance(ON, { positive: true }, 7.8), struck], { error: WANTED });

/** A reading, or repeats at one place, any of which may be rejected or a bound. */
const onReadings = z
  .union([onReading, z.array(onReading).min(1)], { error: WANTED })
  .describe(
    'Reading with both channels on: one, a list of repeats, {value, struck}, or <0.1 where the display stays under its first step.',
  );

type OnReadings = z.output<typeof onReadings>;

const place = z
  .strictObject({
    edge: z.enum(EDGES).describe('Which edge of the LED field, as one faces the panel: left, right, top or bottom.'),
    past: quantity(
      'length',
      'How far outside the LED field, straight out from the middle of that edge, in the plane of the grid.',
      { min: 1, max: 200 },
      '8 cm',
    ),
    on: onReadings,
    off: faintIrradiance(
      'The same place with the panel off: light of the room, which is taken away. Left out, that of the farthest place past the same edge stands in.',
      { min: 0 },
      0.1,
    ).optional(),
  })
  .superRefine(({ on, off }, context) => {
    const readings = acceptedOf(on);
    const bounds = readings.filter((it) => it.bound !== undefined);
    if (bounds.length > 0 && bounds.length < readings.length) {
      const hint =
        'a display that flickers between its first steps stays under the next one: write that as one bound, such as <0.2';
      refuse(context, { wanted: 'repeats that are all readings, or all bounds', hint }, ['on']);
    }
    const mean = readings.reduce((sum, it) => sum + it.value, 0) / readings.length;
    if (off && off.bound === undefined && mean < off.value) {
      const found = `${off.written}, and ${Number(mean.toPrecision(4))} ${off.unit} with the panel on`;
      const wanted = 'no more light with the panel off than with it on';
      refuse(context, { found, wanted, hint: 'are the two the wrong way round?' }, ['off']);
    }
  });

/**
 * Readings past the edges of the LED field, in the plane of the grid. They measure the light that misses the frame,
 * which the grid cannot see.
 */
export const beyondReadings = z
  .array(place)
  .min(1)
  .superRefine((places, context) => {
    const seen = new Map<string, number>();
    places.forEach(({ edge, past }, index) => {
      const key = `${edge} ${past.value.toFixed(3)}`;
      const first = seen.get(key);
      if (first === undefined) {
        seen.set(key, index);
        return;
      }
      const found = `${past.written} past the ${edge} edge a second time`;
      const hint = `write repeats as a list under on of beyond[${first}]`;
      refuse(context, { found, wanted: 'each place once', hint }, [index, 'past']);
    });
  })
  .describe(
    'Readings past the edges of the LED field, in the plane of the grid, the meter facing as it does there: the light that misses the frame. Six of them are the habit: 8, 20 and 40 cm past one long and one short edge.',
  );

export type BeyondPlace = z.output<typeof beyondReadings>[number];

function acceptedOf(on: OnReadings) {
  return (Array.isArray(on) ? on : [on]).flatMap((it) => ('struck' in it ? [] : [it]));
}

import { z } from 'zod';
import { currency, isoDate, line, quantity, text, webAddress } from './fields.ts';
import { formatField } from './format.ts';

const sizeClass = z.strictObject({
  id: z
    .string()
    .regex(/^[a-z][a-z0-9-]*$/, { error: 'lower-case letters, digits and hyphens' })
    .describe('Address part of the class, such as desk.'),
  name: text('Name that readers see.'),
  upToArea: z
    .number()
    .positive()
    .optional()
    .describe(
      'Largest LED area of the class in cm2; only the last class, which takes all that is larger, leaves it out.',
    ),
  description: text('What such a panel covers, in a few words.'),
});

/** content/guide.yaml: what holds for the whole guide. */
export const guideSchema = z.strictObject({
  format: formatField,
  title: text('Title of the guide.'),
  tagline: text('What the guide is, in one line: the heading of its page.'),
  publisher: text('Who publishes it.'),
  site: webAddress('Address at which the guide is published; links in data files start with it.'),
  about: text('What the guide is, in a paragraph.'),
  disclosure: text(
    'Who pays for it, and every connection to makers and sellers, in plain words; shown at the foot of the guide.',
  ),
  disclosureShort: line(
    'The same in one line for the first screen, with whatever earns the tester money; the first sentence of the disclosure where it is left out.',
    120,
  ).optional(),
  currency: currency('Base currency: prices are compared in it.'),
  rates: z
    .array(
      z.strictObject({
        currency: currency('Currency of a price that is not in the base currency.'),
        rate: z.number().positive().describe('How much of the base currency one unit of it buys.'),
        date: isoDate('Day of the rate.'),
        source: text('Where the rate was taken from.'),
      }),
    )
    .default([])
    .describe('Exchange rates for prices in other currencies, one a currency.'),
  tariff: z
    .strictObject({
      price: z.number().positive().max(10).describe('Price of electricity, base currency per kWh.'),
      date: isoDate('Day of the tariff.'),
      source: text('Whose tariff it is.'),
    })
    .describe('Electricity tariff for the cost of an hour.'),
  referenceDistance: quantity('length', 'Distance at which panels are compared; 6 in (15.24 cm) is the habit.', {
    positive: true,
    max: 500,
  }),
  methodVersion: z
    .int()
    .positive()
    .describe(
      'Version of the bench procedure that panels are ranked under; versions that read the grid as it does rank with it.',
    ),
  distanceSetting: quantity(
    'length',
    'How far the distance may be off when it is set with care, either way (a rectangular half-width).',
    { min: 0, max: 10 },
  ),
  edgeSetting: quantity(
    'length',
    'How far each edge of the LED field may be off when its width and height are measured, either way.',
    { min: 0, max: 10 },
  ),
  mainsFrequency: z
    .union([z.literal(50), z.literal(60)], { error: '50 or 60' })
    .default(50)
    .describe('Frequency of the mains at the bench, Hz: 50 or 60. Reference levels of fields depend on it.'),
  rankBy: z
    .enum(['frame', 'emitted'], { error: 'frame or emitted' })
    .default('frame')
    .describe(
      'Whose price the guide’s own page ranks by: frame, a watt of light that reaches the frame, as others publish it; or emitted, a watt of all that leaves the LEDs, as modelled. The other ranking keeps a page of its own.',
    ),
  sizeClasses: z.array(sizeClass).min(1).describe('Size classes by LED area, smallest first.'),
});

export type Guide = z.output<typeof guideSchema>;

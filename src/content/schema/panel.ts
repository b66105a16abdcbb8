import { z } from 'zod';
import { currency, fileReference, isoDate, quantity, text, webAddress } from './fields.ts';
import { photoList } from './photo.ts';
import { sessionSchema } from './session.ts';

const price = z
  .strictObject({
    date: isoDate('Day on which the price was seen or paid.'),
    list: z.number().positive().max(1e7).optional().describe('List price, in the currency named beside it.'),
    paid: z
      .number()
      .positive()
      .max(1e7)
      .optional()
      .describe(
        'What a buyer really pays that day, code and shipping to the guide’s place included, in the same currency.',
      ),
    currency: currency('Currency of the two.'),
    discountCode: z
      .strictObject({
        needed: z.boolean().describe('A code must be typed in to get the paid price.'),
        testerEarns: z.boolean().describe('The tester earns when it is used.'),
      })
      .default({ needed: false, testerEarns: false })
      .describe('Whether a code was needed for the paid price.'),
    link: webAddress('Where it was offered.').optional(),
    paidLink: z.boolean().default(false).describe('The tester earns when a reader buys through the link.'),
    note: text('Anything worth knowing about the price.').optional(),
  })
  .refine((it) => it.list !== undefined || it.paid !== undefined, {
    error: 'a list price, a paid price or both',
  });

const rectangle = (meaning: string) =>
  z
    .strictObject({
      width: quantity('length', 'Width.', { positive: true, max: 1000 }),
      height: quantity('length', 'Height.', { positive: true, max: 1000 }),
    })
    .describe(meaning);

/** What the maker says of the panel, as printed. Kept apart from every measurement. */
const claims = z.strictObject({
  date: isoDate('Day on which the claims were read, at the maker’s or on the box.').optional(),
  wavelengths: z
    .array(
      z.strictObject({
        peak: quantity('wavelength', 'Claimed peak wavelength.', { min: 200, max: 3000 }),
        share: quantity('percent', 'Claimed share of the power or of the LEDs.', { min: 0, max: 100 }).optional(),
      }),
    )
    .min(1)
    .optional()
    .describe('Claimed wavelengths with their shares.'),
  irradiance: z
    .strictObject({
      value: quantity('irradiance', 'Claimed irradiance.', { positive: true, max: 2000 }),
      distance: quantity('length', 'Distance that the claim is for.', { min: 0, max: 1000 }).optional(),
    })
    .optional()
    .describe('Claimed irradiance; compared only at the distance it was claimed for.'),
  power: quantity('power', 'Claimed mains draw with both channels on.', { positive: true, max: 20000 }).optional(),
  beamAngle: quantity(
    'angle',
    'Claimed beam angle, as printed: full angle at half intensity. One that cannot be is flagged on the page.',
    { min: 0, max: 360 },
  ).optional(),
  ledCount: z.int().positive().max(100000).optional().describe('Claimed number of LEDs.'),
});

/** The LEDs as somebody counted them on the tested piece. */
const leds = z.strictObject({
  columns: z.int().min(1).max(500).describe('LEDs in a full row.'),
  rows: z.int().min(1).max(500).describe('Rows of LEDs.'),
  staggered: z.boolean().default(false).describe('Every second row has one LED less and lies half a pitch aside.'),
  size: quantity('length', 'Width of one LED with its lens.', { positive: true, max: 20 }).optional(),
  groups: z
    .array(
      z.strictObject({
        name: text('Wavelength group, such as red.'),
        share: quantity('percent', 'Its share of the light with both channels on.', { positive: true, max: 100 }),
      }),
    )
    .min(1)
    .optional()
    .describe('Wavelength groups with their shares of the power; left out where all LEDs count alike.'),
  pattern: z
    .enum(['checkerboard', 'rows', 'blocks'])
    .default('checkerboard')
    .describe('How the groups are laid out: in turn both ways, row by row, or as bands from the top.'),
});

/** Front matter of content/panels/<slug>/index.md(x). The body is the tester's notes. */
export const panelSchema = z.strictObject({
  maker: fileReference('A file name in content/makers without its ending.'),
  model: text('Model name.'),
  status: z
    .enum(['draft', 'published', 'withdrawn'])
    .describe('draft: not in the guide yet; published; withdrawn: kept at its address, no longer ranked.'),
  statusReason: text('Why it was withdrawn; needed then.').optional(),
  verdict: text('The tester’s verdict in one or two sentences.').optional(),
  obtained: z
    .strictObject({
      how: z.enum(['bought', 'lent', 'given']).describe('bought; lent by the maker; given by the maker.'),
      paidBy: text('By whose money.'),
      note: text('Anything that a reader should know about it.').optional(),
    })
    .optional()
    .describe('How the tested piece was obtained.'),
  claims: claims.optional().describe('What the maker claims.'),
  prices: z.array(price).default([]).describe('Dated prices, any order; the newest is used.'),
  field: rectangle('LED field: outer edge of the first LED to outer edge of the last, both ways.').optional(),
  leds: leds.optional().describe('How the LEDs lie in the field, counted on the tested piece.'),
  housing: rectangle('The housing, kept apart from the LED field.').optional(),
  weight: quantity('mass', 'Weight without stand.', { positive: true, max: 500 }).optional(),
  photos: photoList.default([]).describe('Pictures of the panel; the first stands for it in lists.'),
  sessions: z.array(sessionSchema).default([]).describe('Bench sessions, any order; the newest is the current one.'),
});

export type Panel = z.output<typeof panelSchema>;
export type Price = Panel['prices'][number];

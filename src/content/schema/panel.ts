import { z } from 'zod';
import {
  count,
  currency,
  fileReference,
  formerNames,
  isoDate,
  number,
  prose,
  quantity,
  text,
  webAddress,
} from './fields.ts';
import { photoList } from './photo.ts';
import { sessionSchema } from './session.ts';

const price = z
  .strictObject({
    date: isoDate('Day on which the price was seen or paid.'),
    list: number('List price, in the currency named beside it.', { positive: true, max: 1e7 }, 259).optional(),
    paid: number(
      'What a buyer really pays that day, code and shipping to the guide’s place included, in the same currency.',
      { positive: true, max: 1e7 },
      229,
    ).optional(),
    currency: currency('Currency of the two.'),
    discountCode: z
      .strictObject({
        needed: z.boolean().describe('A code must be typed in to get the paid price.'),
        testerEarns: z.boolean().describe('The tester earns when it is used.'),
      })
      .default({ needed: false, testerEarns: false })
      .describe('Whether a code was needed for the paid price.'),
    link: webAddress('Where it was offered.', 'https://kelpwright.example/plover').optional(),
    paidLink: z.boolean().default(false).describe('The tester earns when a reader buys through the link.'),
    note: prose('Anything worth knowing about the price.', 'Spring sale, until the end of May').optional(),
  })
  .refine((it) => it.list !== undefined || it.paid !== undefined, {
    error: 'a list price, a paid price or both',
  })
  .meta({ anyOf: [{ required: ['list'] }, { required: ['paid'] }] });

const rectangle = (meaning: string, example: { width: string; height: string }) =>
  z
    .strictObject({
      width: quantity('length', 'Width.', { positive: true, max: 1000 }, example.width),
      height: quantity('length', 'Height.', { positive: true, max: 1000 }, example.height),
    })
    .describe(meaning);

/** What the maker says of the panel, as printed. Kept apart from every measurement. */
const claims = z.strictObject({
  date: isoDate('Day on which the claims were read, at the maker’s or on the box.').optional(),
  wavelengths: z
    .array(
      z.strictObject({
        peak: quantity('wavelength', 'Claimed peak wavelength.', { min: 200, max: 3000 }, 660),
        share: quantity('percent', 'Claimed share of the power or of the LEDs.', { min: 0, max: 100 }, 50).optional(),
      }),
    )
    .min(1)
    .optional()
    .describe('Claimed wavelengths with their shares.'),
  irradiance: z
    .strictObject({
      value: quantity('irradiance', 'Claimed irradiance.', { positive: true, max: 2000 }, '60 mW/cm2'),
      distance: quantity('length', 'Distance that the claim is for.', { min: 0, max: 1000 }, '6 in').optional(),
    })
    .optional()
    .describe('Claimed irradiance; compared only at the distance it was claimed for.'),
  power: quantity(
    'power',
    'Claimed mains draw with both channels on.',
    { positive: true, max: 20000 },
    '110 W',
  ).optional(),
  beamAngle: quantity(
    'angle',
    'Claimed beam angle, as printed: full angle at half intensity. One that cannot be is flagged on the page.',
    { min: 0, max: 360 },
    '60 deg',
  ).optional(),
  ledCount: count('Claimed number of LEDs.', 100000, 48).optional(),
});

/** The LEDs as somebody counted them on the tested piece. */
const leds = z.strictObject({
  columns: count('LEDs in a full row.', 500, 6),
  rows: count('Rows of LEDs.', 500, 8),
  staggered: z.boolean().default(false).describe('Every second row has one LED less and lies half a pitch aside.'),
  size: quantity('length', 'Width of one LED with its lens.', { positive: true, max: 20 }, '12 mm').optional(),
  groups: z
    .array(
      z.strictObject({
        name: text('Wavelength group.', 'red'),
        share: quantity('percent', 'Its share of the light with both channels on.', { positive: true, max: 100 }, 50),
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

/** Emitters as somebody saw them lit: what bounds how bright one of them is. */
const emitters = z
  .strictObject({
    diameter: quantity(
      'length',
      'Width of one emitter as it looks lit from straight ahead: its bright spot, and all of the lens only where all of it is bright.',
      { positive: true, max: 20 },
      '3 mm',
    ),
    count: count('How many of them there are.', 100000, 150),
    nearInfrared: count(
      'How many of them shine in near-infrared; all of them where it is left out.',
      100000,
      75,
    ).optional(),
  })
  .refine((it) => (it.nearInfrared ?? 0) <= it.count, {
    error: 'no more in near-infrared than there are',
    path: ['nearInfrared'],
  });

/** Front matter of content/panels/<slug>/index.md(x). The body is the tester's notes. */
export const panelSchema = z
  .strictObject({
    maker: fileReference('A file name in content/makers without its ending.', 'kelpwright'),
    model: text('Model name.', 'Plover'),
    status: z
      .enum(['draft', 'published', 'withdrawn'])
      .describe('draft: not in the guide yet; published; withdrawn: kept at its address, no longer ranked.'),
    statusReason: prose(
      'Why it was withdrawn; needed then.',
      'The maker now sells another panel under this name.',
    ).optional(),
    statusDate: isoDate('Day on which it was withdrawn; the list of changes tells of it then.').optional(),
    formerly: formerNames(
      'Names that its folder had before, part of its old addresses; those lead on to the one of today.',
    ).optional(),
    verdict: prose('The tester’s verdict in one or two sentences.', 'A small panel for a desk.').optional(),
    obtained: z
      .strictObject({
        how: z.enum(['bought', 'lent', 'given']).describe('bought; lent by the maker; given by the maker.'),
        paidBy: prose('By whose money.', 'The library, from membership fees'),
        note: prose('Anything that a reader should know about it.', 'Lent for four weeks, and sent back').optional(),
      })
      .optional()
      .describe('How the tested piece was obtained.'),
    claims: claims.optional().describe('What the maker claims.'),
    prices: z.array(price).default([]).describe('Dated prices, any order; the newest is used.'),
    field: rectangle('LED field: outer edge of the first LED to outer edge of the last, both ways.', {
      width: '7 in',
      height: '11 in',
    }).optional(),
    leds: leds.optional().describe('How the LEDs lie in the field, counted on the tested piece.'),
    emitters: emitters.optional().describe('The emitters as they look lit, for the bounds of what reaches the retina.'),
    housing: rectangle('The housing, kept apart from the LED field.', { width: '20.5 cm', height: '31 cm' }).optional(),
    weight: quantity('mass', 'Weight without stand.', { positive: true, max: 500 }, '3.6 kg').optional(),
    photos: photoList({ file: 'front.jpg', shows: 'Front, on its stand' })
      .default([])
      .describe('Pictures of the panel; the first stands for it in lists.'),
    sessions: z.array(sessionSchema).default([]).describe('Bench sessions, any order; the newest is the current one.'),
  })
  .meta({
    if: { properties: { status: { const: 'withdrawn' } }, required: ['status'] },
    // biome-ignore lint/suspicious/noThenProperty: a keyword of JSON Schema
    then: { required: ['statusReason'] },
  });

export type Panel = z.output<typeof panelSchema>;
export type Price = Panel['prices'][number];

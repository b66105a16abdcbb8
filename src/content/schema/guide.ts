import { z } from 'zod';
import { curly } from './curly.ts';
import { count, currency, fileReference, isoDate, line, number, prose, quantity, text, webAddress } from './fields.ts';
import { formatField } from './format.ts';

const sizeClass = z.strictObject({
  id: z
    .string()
    .regex(/^[a-z][a-z0-9-]*$/, { error: 'lower-case letters, digits and hyphens' })
    .meta({ description: 'Address part of the class: lower-case letters, digits and hyphens.', examples: ['desk'] }),
  name: text('Name that readers see.', 'Desk'),
  upToArea: number(
    'Largest LED area of the class in cm2; only the last class, which takes all that is larger, leaves it out.',
    { positive: true },
    700,
  ).optional(),
  description: prose('What such a panel covers, in a few words.', 'Stands on a desk; a face or a shoulder.'),
});

/** A band of wavelengths. */
const band = (what: string, from: number, to: number) =>
  z
    .strictObject({
      from: quantity('wavelength', `Where ${what} starts.`, { min: 100, max: 20000 }, from).prefault(from),
      to: quantity('wavelength', `Where ${what} ends.`, { min: 100, max: 20000 }, to).prefault(to),
    })
    .refine((it) => it.to.value > it.from.value, { error: 'a band that ends behind its start' })
    .describe(`From where to where ${what} goes.`)
    .prefault({});

/** content/guide.yaml: what holds for the whole guide. */
export const guideSchema = z.strictObject({
  format: formatField,
  title: text('Title of the guide.', 'The Curlew Strand panel ledger'),
  tagline: prose('What the guide is, in one line: the heading of its page.', 'Panels, read on one bench'),
  publisher: text('Who publishes it.', 'Curlew Strand Library of Things'),
  site: webAddress(
    'Address at which the guide is published; links in data files start with it.',
    'https://panels.curlewstrand.example',
  ),
  about: prose('What the guide is, in a paragraph.', 'Each panel goes on our bench before it is lent out.'),
  disclosure: prose(
    'Who pays for it, and every connection to makers and sellers, in plain words; shown at the foot of the guide.',
    'We buy panels at the price that anyone pays. Nothing on these pages earns us anything.',
  ),
  disclosureShort: line(
    'The same in one line for the first screen, with whatever earns the tester money; the first sentence of the disclosure where it is left out.',
    120,
    'Library fees; nothing here earns us anything.',
  )
    .overwrite(curly)
    .optional(),
  licence: z
    .strictObject({
      id: z
        .string()
        .regex(/^[A-Za-z0-9][A-Za-z0-9.-]*$/, { error: 'a licence’s short name, such as CC-BY-4.0' })
        .meta({ description: 'Short name of the licence, as SPDX lists them.', examples: ['CC-BY-4.0'] }),
      title: line('Its name in words.', 120, 'CC BY 4.0'),
      link: webAddress('Where its text stands.', 'https://creativecommons.org/licenses/by/4.0/'),
    })
    .optional()
    .describe('Under what licence others may use the guide’s figures; left out, none is stated and they have to ask.'),
  currency: currency('Base currency: prices are compared in it.'),
  rates: z
    .array(
      z.strictObject({
        currency: currency('Currency of a price that is not in the base currency.'),
        rate: number('How much of the base currency one unit of it buys.', { positive: true }, 1.15),
        date: isoDate('Day of the rate.'),
        source: prose('Where the rate was taken from.', 'Central bank, reference rate of the day'),
      }),
    )
    .default([])
    .describe('Exchange rates for prices in other currencies, one a currency.'),
  tariff: z
    .strictObject({
      price: number('Price of electricity, base currency per kWh.', { positive: true, max: 10 }, 0.31),
      date: isoDate('Day of the tariff.'),
      source: prose('Whose tariff it is.', 'Household tariff of the co-operative'),
    })
    .describe('Electricity tariff for the cost of an hour.'),
  referenceDistance: quantity(
    'length',
    'Distance at which panels are compared; 6 in (15.24 cm) is the habit.',
    { positive: true, max: 500 },
    '6 in',
  ),
  methodVersion: count(
    'Version of the bench procedure that panels are ranked under; versions that read the grid as it does rank with it.',
    undefined,
    2,
  ),
  distanceSetting: quantity(
    'length',
    'How far the distance may be off when it is set with care, either way (a rectangular half-width).',
    { min: 0, max: 10 },
    '2 mm',
  ),
  edgeSetting: quantity(
    'length',
    'How far each edge of the LED field may be off when its width and height are measured, either way.',
    { min: 0, max: 10 },
    '1 mm',
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
  agreement: z
    .array(fileReference('A folder in content/others with another guide’s datapackage.json and tables/.', 'salt-pier'))
    .default([])
    .describe('Other testers whose figures are held against these at /agreement/; without any there is no such page.'),
  spectrumBands: z
    .strictObject({ red: band('red light', 600, 700), nearInfrared: band('near-infrared light', 700, 1400) })
    .prefault({})
    .refine(({ red, nearInfrared }) => red.to.value <= nearInfrared.from.value, {
      error: 'red that ends where near-infrared starts, or before',
    })
    .describe('Bands that the light of a spectrum is shared out to; what lies in neither is the rest.'),
  wavelengthTolerance: quantity(
    'wavelength',
    'How far a peak may lie from where it is claimed, either way; 10 nm is common practice, without a source.',
    { positive: true, max: 100 },
    10,
  ).prefault(10),
  shareTolerance: quantity(
    'percent',
    'How far the share of a claimed wavelength may be from what was measured, percentage points either way. Our own choice.',
    { positive: true, max: 100 },
    10,
  ).prefault(10),
  withdrawn: z
    .array(
      z.strictObject({
        address: line(
          'What was there: /panels/<name>/ stands for all of a panel’s addresses, /panels/<name>/methodology/#session-<day> for a session.',
          200,
          '/panels/plover/',
        ).regex(/^\/\S*$/, { error: () => 'an address of the guide, from the slash on: /panels/kelpwright-plover/' }),
        date: isoDate('Day on which it was withdrawn.'),
        reason: prose('Why, for whoever follows an old link.', 'Never sold'),
        instead: line('A page of the guide that serves instead.', 200, '/panels/gannet/').optional(),
      }),
    )
    .default([])
    .describe('Published addresses that have been given up for good; each keeps a page that says why.'),
  cards: z
    .strictObject({
      preview: z
        .boolean()
        .default(false)
        .describe(
          'A picture of each panel’s key figures, and of each method that has a sketch, shown where their pages are linked to.',
        ),
      show: z
        .boolean()
        .default(false)
        .describe(
          'Cards of panels and methods for a talk, a shelf label or a film, as SVG and PNG, listed at /cards/.',
        ),
      badges: z
        .boolean()
        .default(false)
        .describe(
          'A small card and badges of each panel’s key figures that other writers can embed, listed at /cards/.',
        ),
    })
    .default({ preview: false, show: false, badges: false })
    .describe('Cards that a build draws from the figures. Left out, it draws none.'),
  sizeClasses: z.array(sizeClass).min(1).describe('Size classes by LED area, smallest first.'),
});

export type Guide = z.output<typeof guideSchema>;

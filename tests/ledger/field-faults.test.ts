/** One wrong field in a file that is right otherwise: the checker names the file, the line, and what to write. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type ContentFolder, TODAY, tinyContent } from '../support/content-folder.ts';
import { expectProblems } from './expect-problems.ts';

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
});
afterEach(() => content.delete());

const PLOVER = 'panels/plover/index.md';
const PANEL_FIELDS = /^one of: maker, model, status, statusReason, .*, sessions$/;
const SESSION_FIELDS = /^one of: date, methodVersion, instruments, .*, notes$/;

interface Fault {
  name: string;
  file?: string;
  /** Stands in the file once, and is replaced. */
  from: string;
  to: string;
  /** Text on the line that the message has to name; the replacement where left out. */
  at?: string;
  field: string;
  found: string;
  wanted: string | RegExp;
  hint?: string;
}

const FAULTS: Fault[] = [
  {
    name: 'an unknown field',
    from: 'weight: 9 lb',
    to: 'wieght: 9 lb',
    field: 'wieght',
    found: 'an unknown field, "wieght"',
    wanted: PANEL_FIELDS,
    hint: 'did you mean "weight"?',
  },
  {
    name: 'an unknown field of a session',
    from: 'roomTemperature: 68 F',
    to: 'roomTemprature: 68 F',
    field: 'sessions[0].roomTemprature',
    found: 'an unknown field, "roomTemprature"',
    wanted: SESSION_FIELDS,
    hint: 'did you mean "roomTemperature"?',
  },
  {
    name: 'an unknown field that is like none',
    from: 'weight: 9 lb',
    to: 'colour: white',
    field: 'colour',
    found: 'an unknown field, "colour"',
    wanted: PANEL_FIELDS,
  },
  {
    name: 'a field of the name constructor',
    from: 'weight: 9 lb',
    to: 'constructor: 9',
    field: 'constructor',
    found: 'an unknown field, "constructor"',
    wanted: PANEL_FIELDS,
  },
  {
    name: 'a field of the name __proto__',
    from: 'weight: 9 lb',
    to: '__proto__: { status: draft }',
    field: '__proto__',
    found: 'an unknown field, "__proto__"',
    wanted: PANEL_FIELDS,
  },
  {
    name: 'an unknown field within one line',
    from: '{ peak: 661, fwhm: 17.5 }',
    to: '{ peak: 661, fwmh: 17.5 }',
    field: 'sessions[0].wavelengths.red.fwmh',
    found: 'an unknown field, "fwmh"',
    wanted: 'one of: peak, fwhm',
    hint: 'did you mean "fwhm"?',
  },
  {
    name: 'an instrument for something that none reads',
    from: 'sound: sound-meter',
    to: 'sund: sound-meter',
    field: 'sessions[0].instruments.sund',
    found: 'an unknown field, "sund"',
    wanted: /^one of: irradiance, spectrum, mains, .*, temperature$/,
    hint: 'did you mean "sound"?',
  },
  {
    name: 'a missing field',
    from: 'model: Plover\n',
    to: '',
    at: 'maker: wrackline',
    field: 'model',
    found: 'nothing',
    wanted: 'a text (Model name)',
  },
  {
    name: 'a missing field of a block',
    from: '{ frequency: 65 kHz, percent: 0.7 }',
    to: '{ frequency: 65 kHz }',
    field: 'sessions[0].flicker.combined.percent',
    found: 'nothing',
    wanted: 'a quantity: a number, or a text with its unit (Modulation depth (percent flicker))',
  },
  {
    name: 'an empty field',
    from: 'model: Plover',
    to: 'model:',
    field: 'model',
    found: 'an empty field',
    wanted: 'a text (Model name)',
  },
  {
    name: 'a number for a text',
    from: 'model: Plover',
    to: 'model: 150',
    field: 'model',
    found: '150',
    wanted: 'a text (Model name)',
  },
  {
    name: 'a text for a number',
    from: '  - date: 2026-10-01\n    methodVersion: 1',
    to: '  - date: 2026-10-01\n    methodVersion: one',
    at: 'methodVersion: one',
    field: 'sessions[0].methodVersion',
    found: '"one"',
    wanted: 'a number (Version of the bench procedure that was followed; 2 asks for readings past the edges (beyond))',
  },
  {
    name: 'a text for a list',
    from: 'claims:\n  wavelengths:\n    - { peak: 660 nm, share: 50 % }\n    - { peak: 850 nm, share: 50 % }',
    to: 'claims:\n  wavelengths: 660 and 850 nm',
    at: 'wavelengths: 660 and 850 nm',
    field: 'claims.wavelengths',
    found: '"660 and 850 nm"',
    wanted: 'a list (Claimed wavelengths with their shares)',
  },
  {
    name: 'half an LED',
    from: 'ledCount: 60',
    to: 'ledCount: 60.5',
    field: 'claims.ledCount',
    found: '60.5',
    wanted: 'a whole number (Claimed number of LEDs)',
  },
  {
    name: 'a text for a block',
    from: 'housing:\n  width: 24 cm\n  height: 34 cm',
    to: 'housing: 24 x 34 cm',
    field: 'housing',
    found: '"24 x 34 cm"',
    wanted: 'a block of fields (The housing, kept apart from the LED field)',
  },
  {
    name: 'a list for a quantity',
    from: 'width: 20 cm',
    to: 'width: [20, 30]',
    field: 'field.width',
    found: 'a list of 2',
    wanted: 'a quantity: a number, or a text with its unit (Width)',
  },
  {
    name: 'a text for yes or no',
    from: 'link: https://wrackline.example/plover',
    to: 'paidLink: perhaps',
    field: 'prices[1].paidLink',
    found: '"perhaps"',
    wanted: 'true or false (The tester earns when a reader buys through the link)',
  },
  {
    name: 'a misspelt choice',
    from: 'status: published',
    to: 'status: publishd',
    field: 'status',
    found: '"publishd"',
    wanted: 'one of: draft, published, withdrawn',
    hint: 'did you mean "published"?',
  },
  {
    name: 'a choice that is none',
    from: 'how: bought',
    to: 'how: stolen',
    field: 'obtained.how',
    found: '"stolen"',
    wanted: 'one of: bought, lent, given',
  },
  {
    name: 'a length in kilograms',
    from: 'width: 20 cm',
    to: 'width: 20 kg',
    field: 'field.width',
    found: '"20 kg"',
    wanted: 'a length: a number in cm, or a text with one of: cm, mm, m, in, inch, inches, ", ft (Width)',
    hint: '"kg" is a unit of a mass, not of a length',
  },
  {
    name: 'an irradiance in watts',
    from: 'red: 28.4',
    to: 'red: 28.4 W',
    field: 'sessions[0].peak.red',
    found: '"28.4 W"',
    wanted:
      'an irradiance: a number in mW/cm2, or a text with one of: mW/cm2, W/m2, uW/cm2, W/cm2 (Highest steady reading of a sweep with red alone on)',
    hint: '"W" is a unit of a power, not of an irradiance',
  },
  {
    name: 'a magnetic field in volts a metre',
    from: 'on: 4.3 mG',
    to: 'on: 4.3 V/m',
    field: 'sessions[0].magnetic.on',
    found: '"4.3 V/m"',
    wanted: /^a magnetic flux density: a number in uT, or a text with one of: uT, nT, mT, T, mG, G \(/,
    hint: '"V/m" is a unit of an electric field, not of a magnetic flux density',
  },
  {
    name: 'a misspelt unit',
    from: 'combined: 52.5',
    to: 'combined: 52.5 mW/cm',
    field: 'sessions[0].peak.combined',
    found: '"52.5 mW/cm"',
    wanted: /^an irradiance: a number in mW\/cm2, or/,
    hint: 'did you mean "52.5 mW/cm2"?',
  },
  {
    name: 'a misspelt unit in the grid',
    from: '[31.0, 38.2, 30.8]',
    to: '[31.0, 38.2, 30.8 mw/cm2]',
    field: 'sessions[0].grid.rows[0][2]',
    found: '"30.8 mw/cm2"',
    wanted: /^an irradiance: a number in mW\/cm2, or/,
    hint: 'did you mean "30.8 mW/cm2"?',
  },
  {
    name: 'a misspelt unit among the readings of one point',
    from: '[31.2, {',
    to: '[31.2 mW/cm, {',
    field: 'sessions[0].grid.rows[2][2][0]',
    found: '"31.2 mW/cm"',
    wanted: /^an irradiance: a number in mW\/cm2, or/,
    hint: 'did you mean "31.2 mW/cm2"?',
  },
  {
    name: 'a decimal comma',
    from: 'red: 28.4',
    to: 'red: 28,4',
    field: 'sessions[0].peak.red',
    found: '"28,4"',
    wanted: /^an irradiance: a number in mW\/cm2, or/,
    hint: 'write the decimals after a point: 28.4',
  },
  {
    name: 'a negative irradiance',
    from: 'red: 28.4',
    to: 'red: -28.4',
    field: 'sessions[0].peak.red',
    found: '-28.4',
    wanted: 'an irradiance above 0 mW/cm² (Highest steady reading of a sweep with red alone on)',
  },
  {
    name: 'a negative draw in standby',
    from: 'standby: 0.6',
    to: 'standby: -0.6',
    field: 'sessions[0].mains.standby',
    found: '-0.6',
    wanted: 'a power of at least 0 W (Plugged in, all channels off)',
  },
  {
    name: 'a negative price',
    from: 'paid: 240',
    to: 'paid: -240',
    field: 'prices[0].paid',
    found: '-240',
    wanted: 'a number above 0 (What a buyer really pays that day, code and shipping to the guide’s place included)',
  },
  {
    name: 'an irradiance over 2000 mW/cm2',
    from: '[40.1, 50.0, 39.9]',
    to: '[40.1, 2000.1, 39.9]',
    field: 'sessions[0].grid.rows[1][1]',
    found: '2000.1',
    wanted: 'an irradiance of at most 2000 mW/cm²; more is absurd here',
  },
  {
    name: 'an irradiance over 2000 mW/cm2 in another unit',
    from: 'combined: 52.5',
    to: 'combined: 20001 W/m2',
    field: 'sessions[0].peak.combined',
    found: '"20001 W/m2"',
    wanted: /^an irradiance of at most 2000 mW\/cm²; more is absurd here \(/,
  },
  {
    name: 'an infinite irradiance',
    from: 'combined: 52.5',
    to: 'combined: .inf',
    field: 'sessions[0].peak.combined',
    found: 'Infinity',
    wanted: /^a quantity: a number, or a text with its unit \(/,
  },
  {
    name: 'an irradiance that is no number',
    from: 'combined: 52.5',
    to: 'combined: .nan',
    field: 'sessions[0].peak.combined',
    found: 'NaN',
    wanted: /^a quantity: a number, or a text with its unit \(/,
  },
  {
    name: 'an LED field without area',
    from: 'width: 20 cm',
    to: 'width: 0',
    field: 'field.width',
    found: '0',
    wanted: 'a length above 0 cm (Width)',
  },
  {
    name: 'an absurd temperature: kelvins without their unit',
    from: 'roomTemperature: 68 F',
    to: 'roomTemperature: 293',
    field: 'sessions[0].roomTemperature',
    found: '293',
    wanted: 'a temperature of at most 60 °C; more is absurd here (Air temperature at the bench)',
  },
  {
    name: 'more than all of the light',
    from: 'percent: 0.7',
    to: 'percent: 170',
    field: 'sessions[0].flicker.combined.percent',
    found: '170',
    wanted: 'a percentage of at most 100 %; more is absurd here (Modulation depth (percent flicker))',
  },
  {
    name: 'a bound where a value is needed',
    from: 'red: 28.4',
    to: 'red: <28.4',
    field: 'sessions[0].peak.red',
    found: '"<28.4"',
    wanted: /^an irradiance with one value; a bound \("<"\) can't be calculated with here \(/,
  },
  {
    name: 'a day that the calendar has not',
    from: 'date: 2026-10-01',
    to: 'date: 2026-02-29',
    field: 'sessions[0].date',
    found: '"2026-02-29"',
    wanted: 'a day as YYYY-MM-DD (Day of the session; one session a day)',
  },
  {
    name: 'a month that the calendar has not',
    from: 'date: 2026-10-01',
    to: 'date: 2026-13-01',
    field: 'sessions[0].date',
    found: '"2026-13-01"',
    wanted: 'a day as YYYY-MM-DD (Day of the session; one session a day)',
  },
  {
    name: 'a day in words',
    from: 'date: 2026-11-01',
    to: 'date: 1 November 2026',
    field: 'prices[1].date',
    found: '"1 November 2026"',
    wanted: 'a day as YYYY-MM-DD (Day on which the price was seen or paid)',
  },
  {
    name: 'a grid with rows of different length',
    from: '[40.1, 50.0, 39.9]',
    to: '[40.1, 50.0]',
    field: 'sessions[0].grid.rows[1]',
    found: '2 points',
    wanted: '3 points, as in the first row',
  },
  {
    name: 'a struck reading without a reason',
    from: '{ value: 61.0, struck: The rod had slipped. }',
    to: '{ value: 61.0 }',
    field: 'sessions[0].grid.rows[2][2][1].struck',
    found: 'nothing',
    wanted: 'a text (Why it does not count)',
  },
  {
    name: 'a struck reading with an empty reason',
    from: 'struck: The rod had slipped.',
    to: "struck: ''",
    field: 'sessions[0].grid.rows[2][2][1].struck',
    found: '""',
    wanted: 'a text that is not empty (Why it does not count)',
  },
  {
    name: 'a price that names no amount',
    file: 'panels/teasel/index.md',
    from: '    list: 400\n',
    to: '',
    at: '- date: 2026-10-05',
    field: 'prices[0]',
    found: 'a block of fields',
    wanted: 'a list price, a paid price or both',
  },
  {
    name: 'a currency that is none',
    from: 'currency: GBP',
    to: 'currency: POUNDS',
    field: 'prices[1].currency',
    found: '"POUNDS"',
    wanted: 'a currency code of ISO 4217, such as EUR (Currency of the two)',
  },
  {
    name: 'a link that runs a script',
    from: 'link: https://wrackline.example/plover',
    to: 'link: javascript:alert(1)',
    field: 'prices[1].link',
    found: '"javascript:alert(1)"',
    wanted: 'a web address that starts with https:// (Where it was offered)',
  },
  {
    name: 'a sound meter with a share of the level',
    file: 'instruments/sound-meter.yaml',
    from: 'relative: 0',
    to: 'relative: 3',
    field: 'calibrations[0].relative',
    found: '3',
    wanted:
      /^0, or no such field: a level in dB has no share of the reading; state it in dB, as absolute or repeatabilityDecibels/,
  },
  {
    name: 'a sound meter with a repeatability in per cent',
    file: 'instruments/sound-meter.yaml',
    from: 'resolution: 0.1',
    to: 'resolution: 0.1\nrepeatability: 1',
    at: 'repeatability: 1',
    field: 'repeatability',
    found: '1',
    wanted:
      /^0, or no such field: a level in dB has no share of the reading; state it in dB, as absolute or repeatabilityDecibels/,
  },
  {
    name: 'one calibration, as it was written before there was a list of them',
    file: 'instruments/thermopile.yaml',
    from: 'calibrations:\n  - date: 2026-01-15\n    validMonths: 24\n    relative: 4\n    reference: Invented',
    to: 'calibration:\n  date: 2026-01-15\n  validMonths: 24\n  relative: 4\n  reference: Invented',
    at: 'calibration:',
    field: 'calibration',
    found: '"calibration", which is no longer read',
    wanted: /^calibrations \(Every calibration of the meter/,
    hint: 'write a list, so that earlier sessions keep theirs: calibrations:, and below it each one as - { date: 2026-01-15, validMonths: 24, relative: 4, reference: ... }',
  },
  {
    name: 'an instrument that was never calibrated',
    file: 'instruments/thermopile.yaml',
    from: 'calibrations:\n  - date: 2026-01-15\n    validMonths: 24\n    relative: 4\n    reference: Invented',
    to: 'calibrations: []',
    field: 'calibrations',
    found: 'a list of 0',
    wanted: /^a list of at least 1/,
  },
  {
    name: 'two calibrations on one day',
    file: 'instruments/thermopile.yaml',
    from: 'calibrations:',
    to: 'calibrations:\n  - { date: 2026-01-15, validMonths: 12, relative: 3, reference: Another }',
    at: '  - date: 2026-01-15',
    field: 'calibrations[1].date',
    found: '"2026-01-15"',
    wanted: /^one calibration a day/,
  },
  {
    name: 'an angular response as one percentage, as it was written once',
    file: 'instruments/thermopile.yaml',
    from: 'angularResponse: { f2: 1.5 }',
    to: 'angularResponse: 1.5',
    field: 'angularResponse',
    found: '1.5',
    wanted: /^a block with f2, or with angles/,
    hint: 'write f2 of ISO/CIE 19476, as in { f2: 2.5 }, or the error at some angles, as in { angles: [{ angle: 60 deg, error: 3 }] }',
  },
  {
    name: 'an angular response stated in both ways',
    file: 'instruments/thermopile.yaml',
    from: 'angularResponse: { f2: 1.5 }',
    to: 'angularResponse: { f2: 1.5, angles: [{ angle: 60 deg, error: 3 }] }',
    field: 'angularResponse',
    found: 'a block of fields',
    wanted: /^either f2 or angles, one of the two/,
    hint: 'write f2 of ISO/CIE 19476, as in { f2: 2.5 }, or the error at some angles, as in { angles: [{ angle: 60 deg, error: 3 }] }',
  },
  {
    name: 'two errors at one angle',
    file: 'instruments/thermopile.yaml',
    from: 'angularResponse: { f2: 1.5 }',
    to: 'angularResponse: { angles: [{ angle: 60 deg, error: 3 }, { angle: 60, error: 2 }] }',
    field: 'angularResponse.angles[1].angle',
    found: '60',
    wanted: /^one error an angle/,
  },
  {
    name: 'a response to bands that names none',
    file: 'instruments/thermopile.yaml',
    from: 'spectralResponse: { red: 0.5, nearInfrared: 0.5 }',
    to: 'spectralResponse: {}',
    field: 'spectralResponse',
    found: 'a block of fields',
    wanted: /^red, nearInfrared or both/,
  },
  {
    name: 'a scatter in decibels of what is not read in decibels',
    file: 'instruments/wattmeter.yaml',
    from: 'repeatability: 0.2',
    to: 'repeatabilityDecibels: 0.2',
    field: 'repeatabilityDecibels',
    found: '0.2',
    wanted: 'no such field: it is for instruments that measure sound, this one measures mains',
  },
  {
    name: 'a response to bands of light of what reads no light',
    file: 'instruments/wattmeter.yaml',
    from: 'repeatability: 0.2',
    to: 'spectralResponse: { red: 1 }',
    field: 'spectralResponse',
    found: 'a block of fields',
    wanted: 'no such field: it is for instruments that measure irradiance, this one measures mains',
  },
  {
    name: 'an instrument that reads something unheard of',
    file: 'instruments/coil.yaml',
    from: 'measures: magnetic',
    to: 'measures: magnetc',
    field: 'measures',
    found: '"magnetc"',
    wanted: /^one of: irradiance, spectrum, mains, magnetic, .*, temperature$/,
    hint: 'did you mean "magnetic"?',
  },
  {
    name: 'a range that ends before it starts',
    file: 'instruments/wattmeter.yaml',
    from: 'range: { from: 0.1, to: 3600 }',
    to: 'range: { from: 3600, to: 0.1 }',
    field: 'range',
    found: 'a block of fields',
    wanted: 'a range whose end is above its start (Range of the display, in its unit)',
  },
  {
    name: 'a calibration that is more than uncertain',
    file: 'instruments/thermopile.yaml',
    from: 'relative: 4',
    to: 'relative: 400',
    field: 'calibrations[0].relative',
    found: '400',
    wanted: 'a number of at most 100 (Expanded uncertainty relative to the reading, in %)',
  },
  {
    name: 'a coverage factor of nought',
    file: 'instruments/thermopile.yaml',
    from: 'relative: 4',
    to: 'relative: 4\n    coverageFactor: 0',
    at: 'coverageFactor: 0',
    field: 'calibrations[0].coverageFactor',
    found: '0',
    wanted: 'a number above 0 (Coverage factor k of the two figures above)',
  },
  {
    name: 'free electricity',
    file: 'guide.yaml',
    from: 'price: 0.3',
    to: 'price: 0',
    field: 'tariff.price',
    found: '0',
    wanted: 'a number above 0 (Price of electricity, base currency per kWh)',
  },
  {
    name: 'a size class without an end before the last',
    file: 'guide.yaml',
    from: '    upToArea: 700\n',
    to: '',
    at: '- id: small',
    field: 'sizeClasses[0].upToArea',
    found: 'nothing',
    wanted: /^an area in cm2; only the last class is open-ended/,
  },
  {
    name: 'a source of no standing',
    file: 'cautions.mdx',
    from: 'standing: practice',
    to: 'standing: hearsay',
    field: 'sources[0].standing',
    found: '"hearsay"',
    wanted: 'one of: read, secondary, memory, practice, computed',
  },
  {
    name: 'a method page that hides nothing',
    file: 'methods/rank.mdx',
    from: 'hides: [Everything]',
    to: 'hides: []',
    field: 'hides',
    found: 'a list of 0',
    wanted: 'a list of at least 1 (What the figure hides, one point a line)',
  },
];

test('the folder that the faults are put into has none', () => {
  expect(content.problems()).toEqual([]);
});

test.each(FAULTS.map((fault) => [fault.name, fault] as const))('%s', (_name, fault) => {
  const { file = PLOVER, from, to, at = to.split('\n')[0] as string, field, found, wanted, hint } = fault;
  content.edit(file, from, to);
  expectProblems(content.problems(), {
    file,
    line: content.lineOf(file, at),
    field,
    found,
    wanted,
    ...(hint !== undefined && { hint }),
  });
});

describe('what is odd but possible is taken', () => {
  test.each([
    ['the highest irradiance', 'combined: 52.5', 'combined: 2000'],
    ['a session today', 'date: 2026-10-01', `date: ${TODAY}`],
    ['a day in quotes', 'date: 2026-10-01', `date: '2026-10-01'`],
    ['a leap day', 'date: 2026-10-01', 'date: 2024-02-29'],
    ['no flicker at all', 'percent: 0.7', 'percent: 0'],
    ['a reading above what the meter shows', 'on: 4.3 mG', 'on: ">2000 mG"'],
    ['words in any script', 'model: Plover', 'model: Regenpfeifer ö 🐦'],
    ['numbers with an exponent', 'combined: 52.5', 'combined: 5.25e1'],
  ])('%s', (_name, from, to) => {
    content.edit(PLOVER, from, to);
    expect(content.problems()).toEqual([]);
  });
});

test('a renamed field is both missing and unknown', () => {
  content.edit(PLOVER, 'maker: wrackline', 'makr: wrackline');
  expectProblems(
    content.problems(),
    { file: PLOVER, line: 2, field: 'maker', found: 'nothing', wanted: /^a text \(A file name in content\/makers/ },
    {
      file: PLOVER,
      line: 2,
      field: 'makr',
      found: 'an unknown field, "makr"',
      wanted: PANEL_FIELDS,
      hint: 'did you mean "maker"?',
    },
  );
});

describe('one fault hides no other of the same file', () => {
  test.each([
    [
      'a unit in the grid, and a short row',
      PLOVER,
      [
        ['[31.0, 38.2, 30.8]', '[31.0 W, 38.2, 30.8]'],
        ['[40.1, 50.0, 39.9]', '[40.1, 50.0]'],
      ],
      ['sessions[0].grid.rows[0][0]', 'sessions[0].grid.rows[1]'],
    ],
    [
      'a sound meter without a name, and its share of the level',
      'instruments/sound-meter.yaml',
      [
        ['name: Sound meter\n', ''],
        ['relative: 0', 'relative: 3'],
      ],
      ['name', 'calibrations[0].relative'],
    ],
    [
      'a price without an amount, in no currency',
      'panels/teasel/index.md',
      [
        ['    list: 400\n', ''],
        ['currency: EUR', 'currency: euro'],
      ],
      ['prices[0]', 'prices[0].currency'],
    ],
    [
      'a size class without words, and the last with an end',
      'guide.yaml',
      [
        ['    description: Up to a table lamp.\n', ''],
        ['    name: Large\n', '    name: Large\n    upToArea: 900\n'],
      ],
      ['sizeClasses[0].description', 'sizeClasses[1].upToArea'],
    ],
    [
      'a maker that is not known, two sessions on a day, no reason for the withdrawal, and a wrong unit',
      'panels/teasel/index.md',
      [
        ['maker: knotgrass', 'maker: knotgras'],
        ['status: published', 'status: withdrawn'],
        ['width: 24 cm', 'width: 24 kg'],
        ['        - [30, 40, 30]\n---', '        - [30, 40, 30]\n  - date: 2026-10-02\n    methodVersion: 1\n---'],
      ],
      ['maker', 'statusReason', 'field.width', 'sessions[1].date'],
    ],
  ] as Array<[string, string, Array<[string, string]>, string[]]>)('%s', (_name, file, edits, fields) => {
    for (const [from, to] of edits) content.edit(file, from, to);
    expect(
      content
        .problems()
        .map((it) => it.field)
        .toSorted(),
    ).toEqual(fields.toSorted());
  });
});

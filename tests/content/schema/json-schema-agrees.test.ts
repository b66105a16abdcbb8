/** An editor’s red line stands where the checker has a problem, as far as a schema can say: held against ajv. */
import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { z } from 'zod';
import { COLLECTIONS, type CollectionName } from '../../../src/content/schema/collections.ts';
import { DEMO_FOLDER } from '../../support/demo-folder.ts';

const ajv = new Ajv2020({ strict: false, allErrors: true, validateFormats: false });
const NAMES = Object.keys(COLLECTIONS) as CollectionName[];
const validators = new Map(
  NAMES.map((name) => {
    const json = z.toJSONSchema(COLLECTIONS[name].schema, { io: 'input', unrepresentable: 'any' });
    return [name, ajv.compile(json)] as const;
  }),
);

/** Places that the schema refuses, as `/sessions/0/distance`. */
function refused(name: CollectionName, data: unknown): string[] {
  const validate = validators.get(name);
  if (!validate) throw new Error(`no schema of ${name}`);
  return validate(data) ? [] : (validate.errors ?? []).map((it) => it.instancePath);
}

const frontMatter = (text: string) => /^---\n([\s\S]*?)\n---\n/.exec(text)?.[1] ?? text;

const FILES = NAMES.flatMap((name) =>
  globSync(COLLECTIONS[name].pattern, { cwd: DEMO_FOLDER }).map((file) => [name, file] as const),
);

describe('every file of the demonstration passes', () => {
  test.each(FILES)('%s: %s', (name, file) => {
    expect(refused(name, parse(frontMatter(readFileSync(join(DEMO_FOLDER, file), 'utf8'))))).toEqual([]);
  });
});

const PANEL = `
maker: kelpwright
model: Plover
status: published
claims:
  wavelengths: [{ peak: 660, share: 50 }]
  irradiance: { value: 60 mW/cm2, distance: 6 in }
prices:
  - { date: 2026-11-20, list: 259, paid: 229, currency: EUR }
field: { width: 7 1/2 in, height: 11 in }
weight: 3.6 kg
photos:
  - { file: front.jpg, shows: 'Front, on its stand' }
sessions:
  - date: 2026-11-21
    methodVersion: 1
    instruments: { irradiance: bench-thermopile }
    warmUp: 30 min
    roomTemperature: -3 C
    peak: { combined: 53.4 }
    grid: { inset: 1 in, rows: [[31.2, [40, 41], { value: 74, struck: 'slipped' }]] }
    distances: [{ distance: 30 cm, centre: 27 }]
    beyond: [{ edge: right, past: 8 cm, on: 7.8, off: <0.1 }]
    mains: { standby: <0.1 }
    magnetic: { off: 0.05 uT, on: 3.1 mG, frequency: 65 kHz }
    flicker: { combined: { frequency: 40 kHz, percent: <0.5 % } }
`;
const METER = `
name: Meter
measures: irradiance
unit: mW/cm2
range: { from: 0.1, to: 300 }
response: Flat
resolution: 0.1
calibrations: [{ date: 2026-01-15, validMonths: 24, relative: 4, reference: A lamp }]
angularResponse: { f2: 3 }
`;
const METER_OF_TWO = `
name: Meter
response: Flat
calibrations: [{ date: 2026-01-15, validMonths: 24, relative: 4, reference: A lamp }]
quantities:
  magnetic: { unit: uT, range: { from: 0.1, to: 200 }, resolution: 0.01 }
  electric: { unit: V/m, range: { from: 1, to: 2000 }, resolution: 1, repeatability: 5 }
`;
const GUIDE = readFileSync(join(DEMO_FOLDER, 'guide.yaml'), 'utf8');

/** What is put in the place of what, and where the problem is then. */
const BROKEN: ReadonlyArray<[CollectionName, string, string, string, string]> = [
  ['panels', PANEL, 'model: Plover\n', '', ''],
  ['panels', PANEL, 'model: Plover', "model: ' '", '/model'],
  ['panels', PANEL, 'model: Plover', 'model: 300', '/model'],
  ['panels', PANEL, 'status: published', 'status: public', '/status'],
  ['panels', PANEL, 'status: published', 'status: withdrawn', ''],
  ['panels', PANEL, 'weight: 3.6 kg', 'wieght: 3.6 kg', ''],
  ['panels', PANEL, 'weight: 3.6 kg', 'weight: 3,6 kg', '/weight'],
  ['panels', PANEL, 'weight: 3.6 kg', 'weight: 3.6 cm', '/weight'],
  ['panels', PANEL, 'weight: 3.6 kg', 'weight: -3.6', '/weight'],
  ['panels', PANEL, 'weight: 3.6 kg', 'weight: -3.6 kg', '/weight'],
  ['panels', PANEL, 'weight: 3.6 kg', 'weight: 0 kg', '/weight'],
  ['panels', PANEL, 'weight: 3.6 kg', 'weight: 501', '/weight'],
  ['panels', PANEL, 'weight: 3.6 kg', 'weight: <3.6 kg', '/weight'],
  ['panels', PANEL, 'weight: 3.6 kg', 'weight: about 3 kg', '/weight'],
  ['panels', PANEL, 'weight: 3.6 kg', 'weight: n/a', '/weight'],
  ['panels', PANEL, 'weight: 3.6 kg', 'weight: [3.6]', '/weight'],
  ['panels', PANEL, '7 1/2 in', '7 1/2 uT', '/field/width'],
  ['panels', PANEL, '7 1/2 in', '7-1/2 in', '/field/width'],
  ['panels', PANEL, '7 1/2 in', '7 x 11 in', '/field/width'],
  ['panels', PANEL, 'peak: 660', 'peak: 66', '/claims/wavelengths/0/peak'],
  ['panels', PANEL, 'currency: EUR', 'currency: EURO', '/prices/0/currency'],
  ['panels', PANEL, 'list: 259, paid: 229, ', '', '/prices/0'],
  ['panels', PANEL, 'paid: 229', 'paid: 229 EUR', '/prices/0/paid'],
  ['panels', PANEL, 'date: 2026-11-20', 'date: 20.11.2026', '/prices/0/date'],
  ['panels', PANEL, 'currency: EUR', 'currency: EUR, link: shop.example', '/prices/0/link'],
  ['panels', PANEL, 'file: front.jpg', 'file: front.gif', '/photos/0/file'],
  ['panels', PANEL, "shows: 'Front, on its stand'", 'shows: front.jpg', '/photos/0/shows'],
  ['panels', PANEL, "shows: 'Front, on its stand'", 'shows: Front', '/photos/0/shows'],
  ['panels', PANEL, 'methodVersion: 1', 'methodVersion: 1.5', '/sessions/0/methodVersion'],
  ['panels', PANEL, 'methodVersion: 1', 'methodVersion: 0', '/sessions/0/methodVersion'],
  ['panels', PANEL, 'irradiance: bench', 'light: bench', '/sessions/0/instruments'],
  ['panels', PANEL, 'warmUp: 30 min', 'warmUp: -1 min', '/sessions/0/warmUp'],
  ['panels', PANEL, 'roomTemperature: -3 C', 'roomTemperature: 61', '/sessions/0/roomTemperature'],
  ['panels', PANEL, 'centre: 27 }', 'note: x }', '/sessions/0/distances/0'],
  ['panels', PANEL, ', centre: 27 }', ' }', '/sessions/0/distances/0'],
  ['panels', PANEL, 'edge: right', 'edge: up', '/sessions/0/beyond/0/edge'],
  ['panels', PANEL, 'off: <0.1 }', 'off: ">0.1" }', '/sessions/0/beyond/0/off'],
  ['panels', PANEL, 'standby: <0.1', 'standby: ≤0.1', '/sessions/0/mains/standby'],
  [
    'panels',
    PANEL,
    'frequency: 65 kHz }\n    flicker',
    'frequency: 10 }\n    flicker',
    '/sessions/0/magnetic/frequency',
  ],
  [
    'panels',
    PANEL,
    'frequency: 65 kHz }\n    flicker',
    'frequency: 200000 }\n    flicker',
    '/sessions/0/magnetic/frequency',
  ],
  ['panels', PANEL, ', percent: <0.5 %', '', '/sessions/0/flicker/combined'],
  ['panels', PANEL, "struck: 'slipped'", 'reason: slipped', '/sessions/0/grid/rows/0/2'],
  ['instruments', METER, 'unit: mW/cm2\n', '', ''],
  ['instruments', METER, 'unit: mW/cm2', 'unit: W', '/unit'],
  ['instruments', METER, 'measures: irradiance', 'measures: light', '/measures'],
  ['instruments', METER, 'resolution: 0.1', 'resolution: -0.1', '/resolution'],
  ['instruments', METER, 'f2: 3', 'f2: 3, angles: [{ angle: 60 deg, error: 3 }]', '/angularResponse'],
  ['instruments', METER, 'validMonths: 24', 'validMonths: 121', '/calibrations/0/validMonths'],
  ['instruments', METER, 'angularResponse:', 'calibration:', ''],
  ['instruments', METER, 'angularResponse: { f2: 3 }', 'repeatabilityDecibels: 1', '/repeatabilityDecibels'],
  ['instruments', METER_OF_TWO, 'unit: V/m', 'unit: uT', '/quantities/electric/unit'],
  ['instruments', METER_OF_TWO, 'response: Flat\n', '', '/quantities/magnetic'],
  ['instruments', METER_OF_TWO, 'response: Flat', 'response: Flat\nmeasures: magnetic', '/measures'],
  ['instruments', METER_OF_TWO, 'repeatability: 5', 'angularResponse: { f2: 3 }', '/quantities/electric'],
  ['makers', 'name: A\nwebsite: https://a.example\n', 'https://', 'ftp://', '/website'],
  ['makers', 'name: A\nwarrantyYears: 3\n', '3', 'three', '/warrantyYears'],
  ['guide', GUIDE, 'mainsFrequency: 50', 'mainsFrequency: 55', '/mainsFrequency'],
  ['guide', GUIDE, 'rankBy: frame', 'rankBy: price', '/rankBy'],
  ['guide', GUIDE, 'currency: EUR', 'currency: XYZ', '/currency'],
  ['guide', GUIDE, 'id: palm', 'id: Palm', '/sizeClasses/0/id'],
];

describe('what the checker refuses', () => {
  test('nothing of it stands in the files before they are broken', () => {
    for (const [name, text] of BROKEN) {
      expect(COLLECTIONS[name].schema.safeParse(parse(text)).success).toBe(true);
      expect(refused(name, parse(text))).toEqual([]);
    }
  });

  test.each(BROKEN)('%s, %#', (name, text, from, to, place) => {
    expect(text.split(from).length, from).toBe(2);
    const data = parse(text.replace(from, () => to));
    // A reason that a withdrawn panel needs and an instrument's own fields are looked at by rules between files.
    expect(refused(name, data)).toContain(place);
  });

  test('is refused by the reader at the same places', () => {
    const other = BROKEN.filter(([name, text, from, to, place]) => {
      const parsed = COLLECTIONS[name].schema.safeParse(parse(text.replace(from, () => to)));
      const places = (parsed.error?.issues ?? []).map((it) => (it.path.length > 0 ? `/${it.path.join('/')}` : ''));
      // What is missing in a block is a problem of the field to the reader, and of the block to a schema.
      return !places.some((it) => it.startsWith(place) && (place !== '' || it.split('/').length <= 2));
    });
    // These are problems too: rules between files have them, which see more than a schema of one.
    expect(other.map(([, , , to]) => to)).toEqual([
      'status: withdrawn',
      'file: front.gif',
      'unit: W',
      'repeatabilityDecibels: 1',
      'unit: uT',
    ]);
  });
});

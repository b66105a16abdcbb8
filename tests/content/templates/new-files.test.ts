/** New files are made from the schemas: all that these say is in them, and whatever is offered in them is right. */
import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readContent } from '../../../src/content/read/read-content.ts';
import { ownField } from '../../../src/content/schema/block.ts';
import { INSTRUMENT_KINDS, type InstrumentKind, instrumentSchema } from '../../../src/content/schema/instrument.ts';
import { KIND_FIELDS } from '../../../src/content/schema/instrument-kinds.ts';
import { makerSchema } from '../../../src/content/schema/maker.ts';
import { panelSchema } from '../../../src/content/schema/panel.ts';
import { blocksIn, exampleOf, type JsonSchema, jsonSchemaOf } from '../../../src/content/templates/json-schema.ts';
import { newInstrumentText } from '../../../src/content/templates/new-instrument.ts';
import { newMakerText } from '../../../src/content/templates/new-maker.ts';
import { newPanelText } from '../../../src/content/templates/new-panel.ts';
import { type ContentFolder, TODAY, tinyContent } from '../../support/content-folder.ts';
import { plainPicture } from '../../support/photo-bytes.ts';

interface Case {
  name: string;
  path: string;
  text: string;
  schema: JsonSchema;
  /** What the instrument reads. */
  kinds?: readonly InstrumentKind[];
}

const panel = (session: Partial<Parameters<typeof newPanelText>[0]['session']>) =>
  newPanelText({
    values: { maker: 'wrackline', model: 'Avocet', prices: [{ date: '2026-11-20', currency: 'EUR' }] },
    session: {
      date: '2026-11-21',
      methodVersion: 1,
      distance: '6 in',
      instruments: {},
      grid: { columns: 3, rows: 3 },
      ...session,
    },
  });
const ofPanel = (name: string, text: string): Case => ({
  name,
  path: 'panels/avocet/index.md',
  text,
  schema: jsonSchemaOf(panelSchema),
});
const instrument = (kinds: readonly InstrumentKind[], values = {}): Case => ({
  name: `an instrument for ${kinds.join(' and ') || 'what is still open'}`,
  path: 'instruments/new-meter.yaml',
  text: newInstrumentText({ name: 'New meter', measures: kinds, values }),
  schema: jsonSchemaOf(instrumentSchema),
  kinds,
});

const CASES: Case[] = [
  ofPanel(
    'a panel with all that the bench has',
    panel({
      methodVersion: 2,
      instruments: {
        irradiance: 'thermopile',
        spectrum: 'spectrometer',
        mains: 'wattmeter',
        magnetic: 'coil',
        sound: 'sound-meter',
      },
    }),
  ),
  ofPanel('a panel of a bench without instruments', panel({})),
  ofPanel(
    'a panel of a bench whose meters have no files yet, under the newer procedure',
    newPanelText({
      values: {},
      session: {
        date: '2026-11-20',
        methodVersion: 2,
        distance: '6 in',
        instruments: {},
        grid: { columns: 3, rows: 3 },
      },
    }),
  ),
  ofPanel(
    'a panel of which nothing is known',
    newPanelText({
      values: {},
      session: { methodVersion: 1, distance: '6 in', instruments: {}, grid: { columns: 1, rows: 1 } },
    }),
  ),
  {
    name: 'a maker',
    path: 'makers/new-maker.yaml',
    text: newMakerText({ name: 'New maker' }),
    schema: jsonSchemaOf(makerSchema),
  },
  instrument([]),
  ...(['irradiance', 'magnetic', 'sound'] as const).map((kind) => instrument([kind])),
  instrument(['magnetic', 'electric', 'sound']),
  instrument(['irradiance', 'flicker'], { response: 'A photodiode' }),
];

let content: ContentFolder;
/** Files that examples name. */
const beside = new Map<string, string | Buffer>();
const SPECTRUM = `wavelength (nm),irradiance (W/m2/nm)\n${Array.from(
  { length: 200 },
  (_, i) => `${600 + 2 * i},${(0.001 + Math.exp(-(((2 * i - 60) / 12) ** 2))).toFixed(5)}\n`,
).join('')}`;
beforeAll(async () => {
  content = tinyContent();
  const picture = await plainPicture(8, 8).jpeg().toBuffer();
  const wall = await plainPicture(3500, 2800).png().toBuffer();
  const sound = readFileSync(new URL('../../fixtures/sound/signed-16.wav', import.meta.url));
  for (const name of ['front.jpg', 'wall-at-6-in.jpg']) beside.set(name, picture);
  for (const name of ['running.wav', 'room.wav', 'tone.wav']) beside.set(name, sound);
  for (const name of ['plover-red.csv', 'plover-infrared.csv', 'plover-both.csv']) beside.set(name, SPECTRUM);
  beside.set('wall.jpg', wall);
  beside.set('bench-notes.pdf', '%PDF-1.4');
});
afterAll(() => content.delete());

/** Every field of a schema, at any depth, with what it means; those that some file can't have left out. */
function fieldsOf(schema: JsonSchema, isForeign = (_: string) => false): Array<[string, JsonSchema]> {
  return blocksIn(schema).flatMap((block) =>
    Object.entries(block.properties ?? {})
      .filter(([key]) => !isForeign(key))
      .flatMap(([key, field]) => [[key, field] as [string, JsonSchema], ...fieldsOf(field, isForeign)]),
  );
}

/** True for what an instrument that reads these can't state, or a panel's first session. */
function isForeign({ path, kinds }: { path: string; kinds: readonly InstrumentKind[] }, key: string): boolean {
  if (path.startsWith('panels')) return key === 'carried';
  if (!path.startsWith('instruments') || kinds.length === 0) return false;
  const only = ownField<InstrumentKind>(KIND_FIELDS, key);
  // A file for one quantity says in its words how one for several is written, and that one has a sound meter's field.
  if (only) return !kinds.includes(only) && !(kinds.length === 1 && only === 'sound');
  if (key === 'repeatability') return kinds.every((kind) => kind === 'sound');
  return kinds.length > 1 && (key === 'measures' || INSTRUMENT_KINDS.some((it) => it === key && !kinds.includes(it)));
}

/** The explanations of a text, their lines put together again. */
const explanations = (text: string) =>
  text
    .split('\n')
    .filter((line) => /^\s*# /.test(line))
    .map((line) => line.replace(/^\s*#\s+/, ''))
    .join(' ');

/** Lines that offer a field. */
const OFFERED = /^(\s*)#([A-Za-z]\w*: .*)$/;

function problems({ path, text }: Pick<Case, 'path' | 'text'>) {
  content.write(path, text);
  const isPanel = path.startsWith('panels');
  if (isPanel) for (const [name, bytes] of beside) content.write(`panels/avocet/${name}`, bytes);
  const result = readContent({ folder: content.folder, today: TODAY, drafts: true });
  content.remove(isPanel ? 'panels/avocet' : path);
  return { problems: result.problems, unfinished: result.content?.unfinished ?? [] };
}

describe.each(CASES)('$name', ({ path, text, schema, kinds = [] }) => {
  test('has every field of its schema, with the schema’s own words', () => {
    const said = explanations(text);
    const fields = fieldsOf(schema, (key) => isForeign({ path, kinds }, key));
    expect(fields.length).toBeGreaterThan(5);
    for (const [key, { description = '' }] of fields) {
      expect(said).toContain(description);
      expect(text).toMatch(new RegExp(`(?:^|[ #{,-])${key}:`, 'm'));
    }
  });

  test('fits a line of 120, its comments fewer, and has no space where none should be', () => {
    for (const line of text.split('\n')) {
      expect(line).toBe(line.trimEnd());
      if (/^\s*# /.test(line)) expect(line.length, line).toBeLessThanOrEqual(112);
    }
  });

  test('passes the checker as it comes, its gaps marked', () => {
    const { problems: found, unfinished } = problems({ path, text });
    expect(found).toEqual([]);
    const gaps = unfinished.flatMap((it) => it.unfinished?.gaps ?? []);
    // A line that is commented out may offer a gap too.
    const live = text.split('\n').filter((line) => !line.trimStart().startsWith('#'));
    expect(gaps).toHaveLength(live.join('\n').split('TODO').length - 1);
    for (const { line } of gaps) expect(text.split('\n')[line - 1]).toContain('TODO');
  });

  test('passes with any field stated that it offers, and with all of them', () => {
    const lines = text.split('\n');
    const offered = lines.flatMap((line, i) => (OFFERED.test(line) ? [i] : []));
    expect(offered.length).toBeGreaterThan(0);
    const stated = (which: readonly number[]) =>
      lines.map((line, i) => (which.includes(i) ? line.replace(OFFERED, '$1$2') : line)).join('\n');
    // The files that examples name are not there.
    const found = (which: readonly number[]) =>
      problems({ path, text: stated(which) }).problems.filter((it) => !NO_FILE.test(it.wanted));
    for (const i of offered) expect([lines[i], found([i])]).toEqual([lines[i], []]);
    expect(found(offered)).toEqual([]);
  });
});

/** What is said of a file that a session names and that does not lie there, or is named twice. */
const NO_FILE = /^(?:a file that is there|another file:)/;

describe('the schemas that files are made from', () => {
  const all = [panelSchema, instrumentSchema, makerSchema].flatMap((it) => fieldsOf(jsonSchemaOf(it)));

  test('have an example of everything', () => {
    expect(all.filter(([, field]) => exampleOf(field) === undefined).map(([key]) => key)).toEqual([]);
  });

  test('say the unit of every quantity in its description', () => {
    const quantities = all.filter(([, { type }]) => Array.isArray(type) && type.includes('number'));
    expect(quantities.length).toBeGreaterThan(30);
    for (const [key, { description }] of quantities) expect(description, key).toMatch(/ In (?:[a-zA-Z%]|°)\S*[,;.]/);
  });
});

test('readings of instruments that the bench has are gaps, all others are offered', () => {
  const text = panel({ instruments: { irradiance: 'thermopile', mains: 'wattmeter' } });
  expect(text).toContain('\n    peak: { red: TODO, nearInfrared: TODO, combined: TODO }\n');
  expect(text).toContain(
    '\n      rows:\n        - [TODO, TODO, TODO]\n        - [TODO, TODO, TODO]\n        - [TODO, TODO, TODO]\n',
  );
  expect(text).toContain('\n    mains: { standby: TODO, red: TODO, nearInfrared: TODO, combined: TODO }\n');
  expect(text).toMatch(/\n {4}#sound: \{ distance: 1 m, off: 31.7, on: 49.7 \}\n/);
  expect(text).toMatch(/\n {4}instruments:\n(?: {6}#.*\n)+ {6}irradiance: thermopile\n/);
  expect(text).toMatch(/\n {6}#sound: TODO\n/);
});

test('version 2 of the procedure has its places past the edges', () => {
  const text = panel({ methodVersion: 2, instruments: { irradiance: 'thermopile' } });
  expect(text.match(/ {6}- \{ edge: (?:right|top), past: (?:8|20|40) cm, on: TODO, off: TODO \}/g)).toHaveLength(6);
});

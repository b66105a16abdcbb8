import { Ajv2020 } from 'ajv/dist/2020.js';
import { beforeAll, expect, test } from 'vitest';
import { panelsJson } from '../../../src/site/export/panels-json.ts';
import { panelsFile, panelsSchema } from '../../../src/site/export/panels-schema.ts';
import { demoLedger } from '../../support/demo-ledger.ts';

// biome-ignore lint/suspicious/noExplicitAny: the file as a stranger reads it
type Raw = any;

let text: string;
let file: () => Raw;
let validate: ReturnType<Ajv2020['compile']>;
beforeAll(() => {
  const { ledger } = demoLedger();
  text = [...panelsJson(ledger)].join('');
  file = () => JSON.parse(text);
  // Days and addresses are held by patterns too, so no list of formats is needed.
  validate = new Ajv2020({ strict: false, validateFormats: false }).compile(panelsSchema(ledger.guide.site));
});

test('the file is what its published schema says, by a validator from elsewhere', () => {
  expect(validate(file()), JSON.stringify(validate.errors?.slice(0, 3))).toBe(true);
  expect(panelsFile.safeParse(file()).error?.issues.slice(0, 3)).toBeUndefined();
});

const SPOILT: Array<[string, (it: Raw) => void]> = [
  ['a field that nobody knows', (it) => (it.panels[0].colour = 'red')],
  ['a panel without its address', (it) => delete it.panels[0].address],
  ['a value as text', (it) => (it.panels[0].sessions[0].figures[1][0] = '19')],
  ['a figure of three numbers', (it) => it.panels[0].sessions[0].figures[1].splice(3)],
  ['a day that is none', (it) => (it.panels[0].sessions[0].date = '2026-13-40')],
  ['a format of another time', (it) => (it.format = 2)],
  ['a metric that is not listed', (it) => it.lists.figures[0].push('glow')],
];

test.each(SPOILT)('refused: %s', (_what, spoil) => {
  const spoilt = file();
  spoil(spoilt);
  expect(validate(spoilt)).toBe(false);
});

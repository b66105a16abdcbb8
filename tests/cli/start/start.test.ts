/** A guide of one's own, from flags and from questions. */
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { startCommand } from '../../../src/cli/start/start.ts';
import { readContent } from '../../../src/content/read/read-content.ts';
import { guideSchema } from '../../../src/content/schema/guide.ts';
import { INSTRUMENT_KINDS } from '../../../src/content/schema/instrument-kinds.ts';
import { TODAY } from '../../support/content-folder.ts';
import { runCommand } from '../run-command.ts';

let place: string;
let folder: string;
beforeEach(() => {
  place = mkdtempSync(join(tmpdir(), 'start-'));
  folder = join(place, 'guide');
});
afterEach(() => rmSync(place, { recursive: true, force: true }));

const FLAGS = [
  ...['--title', 'Harbour: a bench', '--publisher', 'Harbour “Makers”', '--site', 'https://bench.example'],
  ...['--disclosure', 'Members pay. Nobody else does: no shop, no maker.', '--currency', 'CAD', '--tariff', '0.12'],
];
const start = (...args: string[]) => runCommand(startCommand, [folder, ...args], 'nowhere');
const asked = (answers: string[], ...args: string[]) => runCommand(startCommand, [folder, ...args], 'nowhere', answers);
const read = (path: string) => readFileSync(join(folder, path), 'utf8');
const problems = () => readContent({ folder: join(folder, 'content'), today: TODAY, drafts: true }).problems;
const files = () => readdirSync(folder, { recursive: true, encoding: 'utf8' }).toSorted();

describe('from flags', () => {
  test('writes what is the tester’s alone, and it has no problem', async () => {
    const { code, out, error } = await start('--yes', ...FLAGS);
    expect([code, error]).toEqual([0, '']);
    expect(out).toContain(`LEDGER_CONTENT=${folder} npm run ledger -- check`);
    expect(problems()).toEqual([]);
    const written = files();
    for (const it of [
      '.gitignore',
      '.vscode/settings.json',
      'README.md',
      'content/guide.yaml',
      'content/panels/.gitkeep',
    ])
      expect(written).toContain(it);
    expect(written.filter((it) => /mdx|package\.json/.test(it))).toEqual([]);
    expect(parse(read('content/guide.yaml'))).toMatchObject({
      ...{ title: 'Harbour: a bench', publisher: 'Harbour “Makers”', currency: 'CAD', mainsFrequency: 60 },
      disclosure: 'Members pay. Nobody else does: no shop, no maker.',
      tariff: { price: 0.12, date: TODAY },
    });
  });

  test('explains every field that a guide may have', async () => {
    await start('--yes', ...FLAGS);
    const text = read('content/guide.yaml');
    for (const key of Object.keys(guideSchema.shape)) expect(text, key).toMatch(new RegExp(`^# .*\\n#?${key}:`, 'm'));
    expect(text).toContain('  - { id: large, name: Large, description: All that is larger. }\n');
    expect(text.split('\n').filter((it) => it.startsWith('#') && it.length > 111)).toEqual([]);
  });

  test.each(INSTRUMENT_KINDS)('an instrument for %s passes, with its gaps', async (kind) => {
    const { code } = await start('--yes', ...FLAGS, '--instrument', `${kind}=Of the shed`);
    expect(code).toBe(0);
    expect(problems()).toEqual([]);
    expect(read('content/instruments/of-the-shed.yaml')).toMatch(new RegExp(`^measures: ${kind}$`, 'm'));
  });

  test('two instruments of one name get files of their own', async () => {
    await start('--yes', ...FLAGS, '--instrument', 'mains=Meter', '--instrument', 'sound=Meter');
    expect(files().filter((it) => it.endsWith('.yaml'))).toEqual([
      'content/guide.yaml',
      'content/instruments/meter-1.yaml',
      'content/instruments/meter.yaml',
    ]);
  });

  test('an instrument’s file is named as its address will be, whatever letters its name has', async () => {
    await start('--yes', ...FLAGS, '--instrument', 'mains=Großes Gerät', '--instrument', 'sound=日本');
    expect(files().filter((it) => it.startsWith('content/instruments/'))).toEqual([
      'content/instruments/.gitkeep',
      'content/instruments/grosses-gerat.yaml',
      'content/instruments/sound.yaml',
    ]);
  });

  test('a repository has its scripts, and the product by its place', async () => {
    const { out } = await start('--yes', '--repository', ...FLAGS);
    expect(out).toContain(`cd ${folder}\n  npm install\n  npx panel-ledger check`);
    const { name, scripts, dependencies } = JSON.parse(read('package.json'));
    expect([name, scripts.build]).toEqual(['harbour-a-bench', 'panel-ledger build']);
    expect(dependencies['panel-ledger']).toMatch(/^file:\.\.\//);
  });

  test('says all that is missing or wrong at once, and writes nothing', async () => {
    const { code, error } = await start(
      '--yes',
      '--title',
      ' ',
      '--site',
      'bench',
      '--instrument',
      'lux=A',
      '--tariff',
      'x',
    );
    expect(code).toBe(1);
    expect(error.split('\n').map((it) => it.trim().split(' ')[0])).toEqual([
      'Nothing',
      '--title',
      '--publisher',
      '--disclosure',
      '--site',
      '--currency',
      '--tariff',
      '--instrument',
      '',
    ]);
    expect(error).toContain('--site "bench": wanted a web address that starts with https://');
    expect(existsSync(folder)).toBe(false);
  });

  test.each([
    [['--tariff', '0,31'], '--tariff "0,31": wanted a number', 'write 0.31, with a decimal point'],
    [['--currency', 'eur'], '--currency "eur": wanted a currency code', 'write EUR'],
    [['--mains-frequency', '55'], '--mains-frequency 55', 'wanted one of: 50, 60'],
    [['--instrument', 'mains'], '--instrument "mains"', 'wanted a name too: mains=NAME'],
  ])('says what to write for %j', async (flags, found, hint) => {
    const { code, error } = await start('--yes', ...FLAGS, ...flags);
    expect(code).toBe(1);
    expect(error).toContain(found);
    expect(error).toContain(hint);
  });

  test('never writes over what is there', async () => {
    await start('--yes', ...FLAGS);
    writeFileSync(join(folder, 'README.md'), 'ours');
    const { code, error } = await start('--yes', ...FLAGS, '--instrument', 'mains=Meter');
    expect(code).toBe(1);
    expect(error).toContain(`${folder}/README.md`);
    expect([read('README.md'), existsSync(join(folder, 'content/instruments/meter.yaml'))]).toEqual(['ours', false]);
  });
});

describe('on a terminal', () => {
  const ANSWERS = ['Title', 'Publisher', 'Members pay.', 'https://a.example', '', '', 'EUR', '0.3', '', '', ''];

  test('asks for what is not given, takes the usual, and asks again for what can’t stand', async () => {
    const answers = ANSWERS.with(3, 'a.example').toSpliced(4, 0, 'https://a.example');
    const { code, out, asked: questions } = await asked([...answers, 'mains Meter', 'mains=Meter', '']);
    expect(code).toBe(0);
    expect(questions).toHaveLength(11 + 1 + 3);
    expect(questions[0]).toBe('Title of the guide:');
    expect(out).toContain('"a.example": wanted a web address');
    expect(out).toContain('"mains Meter": wanted KIND=name');
    expect(parse(read('content/guide.yaml'))).toMatchObject({ referenceDistance: '6 in', mainsFrequency: 50 });
    expect(problems()).toEqual([]);
  });

  test('asks nothing that was given', async () => {
    const { code, asked: questions } = await asked(
      [],
      ...FLAGS,
      '--tagline',
      'a b',
      '--about',
      'a b',
      '--instrument',
      'mains=M',
    );
    expect([code, questions.length]).toEqual([0, 3]);
  });

  test('gives up where the same wrong answer comes again and again', async () => {
    const { code, error } = await asked([]);
    expect(code).toBe(1);
    expect(error).toMatch(/^Nothing was written/);
    expect(existsSync(folder)).toBe(false);
  });
});

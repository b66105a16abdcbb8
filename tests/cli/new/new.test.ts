/** `new panel`, `new instrument`, `new maker`, called in this process as the program calls them. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { ledgerProgram } from '../../../src/cli/program.ts';
import { readContent } from '../../../src/content/read/read-content.ts';
import { type ContentFolder, TODAY, tinyContent } from '../../support/content-folder.ts';

let content: ContentFolder;
let told: string[];
beforeEach(() => {
  content = tinyContent();
  told = [];
  vi.stubEnv('LEDGER_CONTENT', content.folder);
  vi.stubEnv('LEDGER_TODAY', TODAY);
  vi.spyOn(console, 'log').mockImplementation((text: string) => void told.push(text));
  vi.spyOn(process.stdout, 'write').mockImplementation((text) => told.push(String(text)) > 0);
});
afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllEnvs();
  content.delete();
});

const run = async (...args: string[]) => (await ledgerProgram()).parseAsync(['new', ...args], { from: 'user' });
const read = (path: string) => readFileSync(join(content.folder, path), 'utf8');
const check = () => readContent({ folder: content.folder, today: TODAY, drafts: true });

describe('new panel', () => {
  test('takes maker and model from the name, and from the guide what it has', async () => {
    await run('panel', 'Wrackline Red Knot', '--price', '199', '--session', '2026-11-20');
    const text = read('panels/wrackline-red-knot/index.md');
    for (const line of [
      'maker: wrackline',
      'model: Red Knot',
      'status: draft',
      '  - date: 2026-11-25',
      '    paid: 199',
      '    currency: EUR',
      '  - date: 2026-11-20',
      '    methodVersion: 1',
      '    distance: 6 in',
      '      irradiance: thermopile',
      '      mains: wattmeter',
    ]) {
      expect(text.split('\n')).toContain(line);
    }
    expect(text).toMatch(/^---\n# TODO marks/);
    expect(check().problems).toEqual([]);
    expect(told[0]).toBe(`Wrote ${join(content.folder, 'panels/wrackline-red-knot/index.md')}`);
    expect(told.join('\n')).toMatch(/\n {2}to fill in {3}\d+ values in \d+ lines, marked TODO; check lists them\n/);
    for (const line of told.slice(1).join('\n').split('\n')) expect(line.length, line).toBeLessThanOrEqual(80);
  });

  test.each([
    [['--session', '2026-12-01'], 'sessions[0].date'],
    [['--price-date', '2026-12-01'], 'prices[0].date'],
  ])('%j: a day that is still to come is refused, as the check would', async (flags, field) => {
    await expect(run('panel', 'Wrackline Knot', ...flags)).rejects.toThrow(
      `${field}\n  found   "2026-12-01"\n  wanted  a day that is not in the future (today is ${TODAY})`,
    );
    expect(existsSync(join(content.folder, 'panels/wrackline-knot'))).toBe(false);
  });

  test('filled in, it is a panel like any other', async () => {
    await run('panel', 'wrackline-knot', '--price', '199', '--list', '220', '--session', '2026-11-20');
    const path = 'panels/wrackline-knot/index.md';
    const values: Record<string, string> = {
      how: 'bought',
      paidBy: 'The library',
      share: '50',
      frequency: '60 kHz',
      warmUp: '30 min',
      width: '20 cm',
      height: '30 cm',
      value: '60',
      distance: '6 in',
      standby: '0.6',
      red: '50',
      nearInfrared: '52',
      combined: '100',
      off: '32',
      on: '44',
      peak: '660',
      fwhm: '17',
      power: '110 W',
    };
    const filled = read(path)
      .replace('status: draft', 'status: published')
      .replace(
        'peak: { red: TODO, nearInfrared: TODO, combined: TODO }',
        'peak: { red: 28, nearInfrared: 26, combined: 53 }',
      )
      .replace(/\[TODO, TODO, TODO\]/g, '[31, 38, 30]')
      .replace(/(?<!#)\b(\w+): TODO/g, (_, key: string) => `${key}: ${values[key] ?? 'MISSING'}`);
    expect(filled).not.toContain('MISSING');
    content.write(path, filled);
    const { content: all, problems } = check();
    expect(problems).toEqual([]);
    expect(all?.unfinished).toEqual([]);
    expect(all?.panels.get('wrackline-knot')?.data.sessions[0]?.peak?.combined?.value).toBe(53);
  });

  test('names the instrument that was calibrated last and still holds, and says which have run out', async () => {
    const newer = read('instruments/thermopile.yaml').replace('2026-01-15', '2026-06-15');
    content.write('instruments/newer-thermopile.yaml', newer);
    content.edit('instruments/coil.yaml', 'validMonths: 24', 'validMonths: 6');
    await run('panel', 'Wrackline Knot');
    const text = read('panels/wrackline-knot/index.md');
    expect(text).toContain('\n      irradiance: newer-thermopile\n');
    expect(text).toContain('\n      #magnetic: TODO\n');
    expect(told.join('\n')).toContain('no calibration holds for: magnetic');
  });

  test('of a day before a calibration takes the one of then', async () => {
    content.write(
      'instruments/newer-thermopile.yaml',
      read('instruments/thermopile.yaml').replace('2026-01-15', '2026-06-15'),
    );
    await run('panel', 'Wrackline Knot', '--session', '2026-05-01', '--instrument', 'length=rule');
    expect(read('panels/wrackline-knot/index.md')).toContain('\n      irradiance: thermopile\n');
  });

  test('any other field, by its path', async () => {
    await run(
      'panel',
      'Knot',
      '--maker',
      'wrackline',
      '--grid',
      '5x3',
      '--set',
      'claims.power=110 W',
      '--set',
      'sessions.warmUp=40 min',
    );
    const text = read('panels/wrackline-knot/index.md');
    expect(text).toContain('\nmodel: Knot\n');
    expect(text).toContain('\n  power: 110 W\n');
    expect(text).toContain('\n    warmUp: 40 min\n');
    expect(text).toContain('\n        - [TODO, TODO, TODO, TODO, TODO]\n');
  });

  test('refuses a name that is there, with one that is not', async () => {
    const before = read('panels/plover/index.md');
    await expect(run('panel', 'Plover')).rejects.toThrow(
      /There is a panel "plover" already; nothing was written\.\n.*plover-2$/,
    );
    expect(read('panels/plover/index.md')).toBe(before);
  });

  test.each([
    [
      ['--maker', 'wrackline-co'],
      /--maker "wrackline-co"; wanted one of: knotgrass, wrackline\nDid you mean wrackline\?/,
    ],
    [['--list', '12,50'], /prices\[0\]\.list\n {2}found {3}"12,50"\n {2}wanted {2}a number .*\n {2}hint .*12\.50/],
    [['--currency', 'EURO'], /prices\[0\]\.currency\n {2}found {3}"EURO"/],
    [['--obtained', 'stolen'], /obtained\.how\n {2}found {3}"stolen"\n {2}wanted {2}one of: bought, lent, given/],
    [['--session', '20.11.2026'], /sessions\[0\]\.date\n {2}found {3}"20\.11\.2026"/],
    [['--set', 'clams.power=110 W'], /clams\n {2}found {3}an unknown field, "clams"\n[\s\S]*did you mean "claims"\?/],
    [['--set', 'obtained=bought'], /obtained\n {2}found {3}"bought"\n {2}wanted {2}a block of fields/],
    [['--set', 'weight'], /--set "weight"; wanted a field and its value/],
    [['--grid', '3'], /--grid "3"; wanted columns and rows, such as 3x5/],
    [['--instrument', 'light=thermopile'], /wanted kind=name, where the kind is one of: irradiance/],
    [['--instrument', 'mains=watmeter'], /wanted an instrument for mains: wattmeter\nDid you mean mains=wattmeter\?/],
  ])('refuses %j, and writes nothing', async (flags, message) => {
    await expect(run('panel', 'Wrackline Knot', ...flags)).rejects.toThrow(message);
    expect(() => read('panels/wrackline-knot/index.md')).toThrow(/ENOENT/);
  });

  test('prints it instead, or tells its gaps to a program', async () => {
    await run('panel', 'Wrackline Knot', '--print');
    expect(told.join('')).toMatch(/^---\n[\s\S]*\nmaker: wrackline\n[\s\S]*\n---\n\n$/);
    expect(() => read('panels/wrackline-knot/index.md')).toThrow(/ENOENT/);
    told = [];
    await run('panel', 'Wrackline Knot', '--json');
    const { file, gaps } = JSON.parse(told.join('')) as { file: string; gaps: Array<{ field: string; line: number }> };
    const lines = readFileSync(file, 'utf8').split('\n');
    expect(gaps.map((it) => it.field)).toContain('sessions[0].grid.rows[2][2]');
    for (const { line } of gaps) expect(lines[line - 1]).toContain('TODO');
  });

  test('of a guide in which something else is wrong', async () => {
    content.edit('guide.yaml', 'currency: EUR\nrates', 'currency: EURO\nrates');
    await run('panel', 'Wrackline Knot');
    expect(read('panels/wrackline-knot/index.md')).toContain('\n    currency: TODO\n');
  });
});

describe('new instrument', () => {
  test('a file that a session may name while it has gaps', async () => {
    await run(
      'instrument',
      'Plug-in wattmeter',
      '--measures',
      'mains',
      '--from',
      '0.1',
      '--to',
      '3600',
      '--relative',
      '1',
    );
    const text = read('instruments/plug-in-wattmeter.yaml');
    expect(text).toContain('\nname: Plug-in wattmeter\n');
    expect(text).toContain('\nunit: W\n');
    expect(text).toContain('\nrange: { from: 0.1, to: 3600 }\n');
    expect(text).toContain('\n    relative: 1\n');
    expect(check().problems).toEqual([]);
  });

  test('several quantities have a block each', async () => {
    await run(
      'instrument',
      'Field meter',
      '--measures',
      'magnetic',
      '--measures',
      'electric',
      '--response',
      'One coil',
      '--set',
      'quantities.magnetic.unit=mG',
    );
    const text = read('instruments/field-meter.yaml');
    expect(text).toMatch(
      /\nresponse: One coil\n[\s\S]*\nquantities:\n[\s\S]*\n {2}magnetic:\n[\s\S]*\n {4}unit: mG\n[\s\S]*\n {2}electric:\n/,
    );
    expect(text).not.toMatch(/^ {4}response:/m);
    expect(check().problems).toEqual([]);
  });

  test('refuses what it can’t read', async () => {
    await expect(run('instrument', 'M', '--measures', 'electrik')).rejects.toThrow(/Did you mean electric\?/);
    await expect(run('instrument', 'M', '--measures', 'radio', '--measures', 'sound', '--from', '1')).rejects.toThrow(
      'Which quantity has range.from? Say it by name: --set "quantities.radio.range.from=1"',
    );
    await expect(run('instrument', 'Coil')).rejects.toThrow(/There is an instrument "coil" already/);
    await expect(run('instrument', '§')).rejects.toThrow(/no letter or digit/);
  });
});

describe('new maker', () => {
  test('asks for nothing but its name', async () => {
    await run('maker', 'Hälsa & Söner', '--warranty-years', '2');
    const text = read('makers/halsa-soner.yaml');
    expect(text).toContain('\nname: Hälsa & Söner\n');
    expect(text).toContain('\nwarrantyYears: 2\n');
    expect(check().problems).toEqual([]);
    expect(told.join('\n')).toContain('to fill in   nothing');
  });

  test('refuses one that is there, and a value that can’t be', async () => {
    await expect(run('maker', 'Wrackline')).rejects.toThrow(/wrackline-2$/);
    await expect(run('maker', 'New', '--website', 'shop')).rejects.toThrow(/website\n {2}found {3}"shop"/);
  });
});

test('the help of each has an example and its exit codes', async () => {
  const [command] = (await ledgerProgram('new')).commands;
  expect(command?.commands.map((it) => it.name())).toEqual(['panel', 'instrument', 'maker']);
  for (const it of command?.commands ?? []) {
    let help = '';
    it.configureOutput({ writeOut: (text) => (help += text) });
    it.outputHelp();
    expect(help).toMatch(/Examples:\n {2}[\s\S]*Exit code:\n {2}0 {2}/);
    for (const line of help.split('\n')) expect(line.length, line).toBeLessThanOrEqual(80);
  }
});

/** Recalibrating as a tester does it: the file keeps its order, past sessions keep theirs, slips are asked about. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { recalibrateCommand } from '../../../src/cli/recalibrate/recalibrate.ts';
import { calibrationOn } from '../../../src/ledger/instruments.ts';
import { type ContentFolder, tinyContent } from '../../support/content-folder.ts';
import { runCommand } from '../run-command.ts';

const METER = 'instruments/thermopile.yaml';
/** Newest first, with comments, as a hand keeps it. */
const KEPT = `calibrations:
  - date: 2026-09-01      # the second
    validMonths: 24
    relative: 4
    reference: 'Lamp standard'

  # before the guide
  - date: 2024-09-01
    validMonths: 12
    relative: 5
    reference: 'Lamp standard'
`;

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
  const text = content.read(METER);
  content.write(METER, text.replace(/calibrations:\n(?: .*\n|\n)+/, KEPT));
  expect(content.problems()).toEqual([]);
});
afterEach(() => content.delete());

const run = (args: string[], answers?: string[]) =>
  runCommand(recalibrateCommand, ['thermopile', ...args], content.folder, answers);
const CERTIFICATE = ['--relative', '3', '--reference', 'Lamp standard, and LEDs of both bands'];

test('is added where the file has its newest, in its style; months go over from the one before', async () => {
  const before = content.read(METER);
  const { code, out, error } = await run(['--date', '2026-10-02', ...CERTIFICATE, '--yes']);
  expect([error, code]).toEqual(['', 0]);
  expect(content.read(METER)).toBe(
    before.replace(
      'calibrations:\n',
      `calibrations:\n  - date: 2026-10-02\n    validMonths: 24\n    relative: 3\n    reference: 'Lamp standard, and LEDs of both bands'\n\n`,
    ),
  );
  expect(out.split('\n').filter((it) => it.length > 80)).toEqual([]);
  expect(out).toMatch(/Added to instruments\/thermopile\.yaml\.\nNext: npm run check, then npm run build\.\n$/);
  expect(content.problems()).toEqual([]);
});

test('tells which sessions it is of, as the ledger has it', async () => {
  const { out } = await run(['--date', '2026-10-02', ...CERTIFICATE, '--dry-run', '--json']);
  const { concerned, kept, written } = JSON.parse(out);
  expect([concerned, kept, written]).toEqual([
    [{ panel: 'Knotgrass Teasel', date: '2026-10-02' }],
    [{ panel: 'Wrackline Plover', date: '2026-10-01' }],
    false,
  ]);
  await run(['--date', '2026-10-02', ...CERTIFICATE, '--yes']);
  const meter = content.content().instruments.get('thermopile');
  if (!meter) throw new Error('no meter');
  for (const { date } of concerned) expect(calibrationOn(meter.data, date)?.relative).toBe(3);
  for (const { date } of kept) expect(calibrationOn(meter.data, date)?.relative).toBe(4);
});

test('says so where no session is concerned', async () => {
  const { out } = await run(['--date', '2026-11-20', ...CERTIFICATE, '--dry-run']);
  expect(out.replaceAll('\n', ' ')).toContain('There is none yet, so no figure changes.');
  expect(out).toContain('It does not concern 2 sessions');
});

describe('slips', () => {
  test.each([
    ['older', ['--date', '2026-08-01', ...CERTIFICATE, '--accept', 'gap'], '1 Aug 2026 is before 1 Sep 2026'],
    [
      'uncertainty',
      ['--relative', '13', '--reference', 'x'],
      'has grown by a factor of 3.3: 13 %, and 4 % on 1 Sep 2026',
    ],
    ['uncertainty', ['--relative', '4', '--coverage-factor', '0.5', '--reference', 'x'], 'grown by a factor of 4'],
    [
      'gap',
      ['--date', '2026-11-20', ...CERTIFICATE],
      '2 sessions read after that and before 20 Nov 2026 keep it, and say that it had lapsed.',
    ],
  ])('%s: refused without a terminal, written when it is accepted', async (id, args, text) => {
    if (id === 'gap')
      content.write(
        METER,
        content.read(METER).replace('validMonths: 24', 'validMonths: 1').replace('2026-09-01', '2026-08-01'),
      );
    const before = content.read(METER);
    const refused = await run([...args, '--yes']);
    expect(refused.code).toBe(1);
    expect(refused.error.replaceAll(/\s+/g, ' ')).toContain(text);
    expect(refused.error).toContain(`--accept ${id}\n`);
    expect(content.read(METER)).toBe(before);
    const accepted = await run([...args, '--yes', '--accept', id]);
    expect([accepted.error, accepted.code]).toEqual(['', 0]);
    expect(content.problems()).toEqual([]);
  });

  test('a calibration that comes late is of the sessions up to the next one', async () => {
    content.edit(METER, '2026-09-01', '2026-10-02');
    const { out } = await run(['--date', '2026-09-20', ...CERTIFICATE, '--yes', '--accept', 'older,gap', '--json']);
    expect(JSON.parse(out)).toMatchObject({ concerned: [{ date: '2026-10-01' }], kept: [{ date: '2026-10-02' }] });
  });
});

describe('on a terminal', () => {
  test('what was not given is asked for, with what is usual', async () => {
    const { code, asked } = await run([], ['', '3 %', '', '', 'Lamp standard', 'y']);
    expect(asked).toEqual([
      'Day of the calibration [2026-11-25]:',
      'Expanded uncertainty relative to the reading, in %:',
      'Expanded absolute uncertainty, in mW/cm2 [none]:',
      'Months until the next one is due [24]:',
      'Against what, and by whom in general terms:',
      'Add it to instruments/thermopile.yaml? [y/N]',
    ]);
    expect(code).toBe(0);
    expect(content.read(METER)).toContain(
      "  - date: 2026-11-25\n    validMonths: 24\n    relative: 3\n    reference: 'Lamp standard'\n",
    );
  });

  test('no writes nothing', async () => {
    const before = content.read(METER);
    expect((await run(CERTIFICATE, ['', '', 'n'])).error).toBe('Nothing was written.\n');
    expect(content.read(METER)).toBe(before);
  });
});

test('all that is wrong is said at once', async () => {
  const { code, error } = await run([
    '--date',
    '2027-01-01',
    '--valid-months',
    '2 years',
    '--relative',
    '400',
    '--absolute',
    '1 uT',
    '--yes',
  ]);
  expect(code).toBe(1);
  expect(error.match(/^the command line {2}(\S+)$/gm)?.map((it) => it.split('  ')[1])).toEqual([
    '--date',
    '--valid-months',
    '--relative',
    '--absolute',
    '--reference',
  ]);
  expect((await run(['--relative', '0', '--reference', 'x'])).error).toContain('no calibration is exact');
  expect((await run(['--reference', 'x'])).error).toContain('what the certificate says: --relative in %');
});

test('another one of the same day, and an instrument that is not there, are one line', async () => {
  expect((await run(['--date', '2026-09-01', ...CERTIFICATE])).error).toContain(
    'has a calibration of 2026-09-01 already',
  );
  const ran = await runCommand(recalibrateCommand, ['thermopyle', ...CERTIFICATE], content.folder);
  expect(ran.error).toBe('There is no instrument "thermopyle"; did you mean thermopile?\n');
});

test('help has an example, the slips and the exit codes', async () => {
  const { out } = await run(['--help']);
  for (const text of ['Example:', 'Exit code:', 'older', 'uncertainty', 'gap']) expect(out).toContain(text);
});

import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { benchCommand } from '../../../src/cli/bench/bench.ts';
import { exportRun, importRun } from '../../../src/site/bench/browser/pad-file.ts';
import { doAct, newLog, type Run, runOf } from '../../../src/site/bench/browser/run.ts';
import { contentFile } from '../../../src/site/bench/browser/run-file.ts';
import { type ContentFolder, TODAY, tinyContent } from '../../support/content-folder.ts';
import { plainPicture } from '../../support/photo-bytes.ts';
import { runCommand } from '../run-command.ts';

const PLOVER = 'panels/plover/index.md';
let content: ContentFolder;
let saved: string;
let pad: string;
beforeEach(() => {
  content = tinyContent();
  saved = mkdtempSync(join(tmpdir(), 'saved-runs-'));
  pad = join(saved, 'run.bench.json');
});
afterEach(() => {
  content.delete();
  rmSync(saved, { recursive: true });
});

const START: Run = {
  id: 'run',
  panel: { slug: 'plover', isNew: false, maker: 'wrackline', model: 'Plover' },
  date: TODAY,
  methodVersion: 1,
  instruments: { irradiance: 'thermopile', mains: 'wattmeter' },
  grid: { rows: 1, columns: 2, inset: '1 in' },
  settings: { distance: '6 in' },
  carried: {},
  entries: [],
  texts: {},
  photos: [],
  isFinished: true,
};

const entered = (start: Run, readings: Readonly<Record<string, string>>) =>
  Object.entries(readings).reduce(
    (log, [path, written]) => doAct(log, { kind: 'enter', path, written, at: `${TODAY}T10:00:00Z` }),
    newLog(start),
  );
const READ = { 'grid.rows[0][0]': '40.10', 'grid.rows[0][1]': '41.2', 'peak.combined': '45', 'mains.combined': '99' };

const bench = (...args: string[]) => runCommand(benchCommand, args, content.folder);
/** Takes a run in, as a pad has saved it. */
function read(log: ReturnType<typeof newLog>, ...flags: string[]) {
  writeFileSync(pad, exportRun(log));
  return bench('read', pad, '--yes', ...flags);
}

describe('bench read', () => {
  test('adds a session to the panel’s file, the same bytes as the pad shows', async () => {
    const before = content.read(PLOVER);
    const log = entered(START, READ);
    const { out, error, code } = await read(log);
    expect([error, code]).toEqual(['', 0]);
    expect(out).toContain(`A session of ${TODAY}, 4 readings.`);
    expect(content.read(PLOVER)).toBe(
      contentFile(runOf(log), { guide: { data: {} }, panels: [{ slug: 'plover', file: PLOVER }] }, before),
    );
    expect(content.read(PLOVER)).toContain('        - [40.10, 41.2]');
    expect(content.problems()).toEqual([]);
    const again = await read(log);
    expect([again.out, again.code]).toEqual(['All of it is there already; nothing was written.\n', 0]);
  });

  test('begins a new panel, its photo beside it', async () => {
    const panel = { slug: 'wrackline-dotterel', isNew: true, maker: 'wrackline', model: 'Dotterel' };
    const start = { ...START, panel, photos: [{ file: 'front.jpg', shows: 'The front, lit.' }], isFinished: false };
    const log = entered(start, { ...READ, 'field.width': '20 cm', 'field.height': '30 cm' });
    const without = await read(log);
    expect([without.code, without.error]).toEqual([1, expect.stringContaining('There is no front.jpg in ')]);
    const file = join(saved, 'front.jpg');
    writeFileSync(file, await plainPicture(40, 30).jpeg().toBuffer());
    const { error, code, out } = await read(log);
    expect([error, code]).toEqual(['', 0]);
    expect(out).toContain('A new panel with a session');
    expect(content.read('panels/wrackline-dotterel/index.md')).toContain('field: { width: 20 cm, height: 30 cm }');
    expect(existsSync(join(content.folder, 'panels/wrackline-dotterel/front.jpg'))).toBe(true);
    expect(content.problems()).toEqual([]);
    expect((await read(log)).out).toBe('All of it is there already; nothing was written.\n');
  });

  test('puts another tester’s readings beside those of the day, and lists what does not agree', async () => {
    await read(entered(START, READ));
    const written = content.read(PLOVER);
    const theirs = entered(START, { ...READ, 'grid.rows[0][1]': '43', 'mains.red': '50.2' });
    const { out, error, code } = await read(theirs);
    expect(out).toBe('grid.rows[0][1]\n  mine    41.2\n  theirs  43\n\n');
    expect([code, error]).toEqual([1, expect.stringContaining('1 place with two values; nothing was written.')]);
    expect(content.read(PLOVER)).toBe(written);
    const json = JSON.parse((await read(theirs, '--json')).out);
    expect(json.conflicts).toEqual([{ place: 'grid.rows[0][1]', mine: '41.2', theirs: '43', taken: null }]);

    expect((await read(theirs, '--take', 'mine', '--take', 'grid.rows[0][1]=theirs')).code).toBe(0);
    expect(content.read(PLOVER)).toContain('        - [40.10, 43]');
    expect(content.read(PLOVER)).toContain('    mains: { red: 50.2, combined: 99 }');
    expect(content.problems()).toEqual([]);
  });

  test.each([
    ['{', 'wanted  a file that the bench pad'],
    ['{"kind":"bench run","format":9}', 'format\n  wanted  1; another version of the program wrote it'],
    [exportRun(newLog({ ...START, date: 'today' })), 'start.date\n  wanted  a day as YYYY-MM-DD'],
    [exportRun(newLog({ ...START, photos: [{ file: '../../x.jpg', shows: '' }] })), 'wanted  a name without a folder'],
    [exportRun(newLog({ ...START, panel: { ...START.panel, slug: '../x' } })), 'wanted  lower-case letters'],
    [exportRun(entered(START, { 'peak.red': '7 kg' })), 'is a unit of a mass'],
  ])('refuses %#', async (text, complaint) => {
    const before = content.read(PLOVER);
    writeFileSync(pad, text);
    const { error, code } = await bench('read', pad, '--yes');
    expect([code, content.read(PLOVER)]).toEqual([1, before]);
    expect(error).toContain(complaint);
  });

  test('asks, shows, and knows no other side', async () => {
    writeFileSync(pad, exportRun(entered(START, READ)));
    const before = content.read(PLOVER);
    expect((await bench('read', pad)).code).toBe(1);
    const shown = await bench('read', pad, '--dry-run');
    expect([shown.code, content.read(PLOVER)]).toEqual([0, before]);
    expect(shown.out).toContain('Nothing was written (--dry-run).');
    expect((await bench('read', pad, '--take', 'ours')).error).toContain('wanted mine, theirs, or a place');
  });
});

describe('bench write', () => {
  test('gives a session to the pad, and taking it back changes nothing', async () => {
    const { code, out } = await bench('write', 'plover', '--out', pad);
    expect([code, out]).toEqual([0, `Wrote ${pad}: the session of 2026-10-01, 29 readings.\n`]);
    const run = runOf(importRun(readFileSync(pad, 'utf8')));
    expect(run.entries).toContainEqual(
      expect.objectContaining({ path: 'grid.rows[2][2]', written: '61.0', struck: 'The rod had slipped.' }),
    );
    expect(run).toMatchObject({
      panel: { maker: 'wrackline', model: 'Plover' },
      texts: { notes: 'Nothing happened.' },
    });
    expect((await bench('read', pad, '--yes')).out).toBe('All of it is there already; nothing was written.\n');
    expect((await bench('write', 'plover', '--out', pad)).error).toContain('is there already');
  });

  test('says which panels and days there are', async () => {
    expect((await bench('write', 'plovr')).error).toContain('did you mean plover?');
    expect((await bench('write', 'plover', '--date', '2026-01-01')).error).toContain('its days are 2026-10-01');
  });
});

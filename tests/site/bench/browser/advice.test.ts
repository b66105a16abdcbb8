import { beforeAll, describe, expect, test } from 'vitest';
import type { OpticsResult } from '../../../../src/measure/beam/optics-result.ts';
import { isFigure } from '../../../../src/measure/figure.ts';
import { benchPanelFile, benchSetup } from '../../../../src/site/bench/bench-setup.ts';
import type { Advice } from '../../../../src/site/bench/browser/advice.ts';
import type { BenchSetup } from '../../../../src/site/bench/browser/bench-data.ts';
import { doAct, newLog, type Run, type RunLog, runOf } from '../../../../src/site/bench/browser/run.ts';
import { carriable, startRun } from '../../../../src/site/bench/browser/start-run.ts';
import { workRun } from '../../../../src/site/bench/browser/worked-run.ts';
import { say } from '../../../../src/words/say.ts';
import { type Demo, demoLedger } from '../../../support/demo-ledger.ts';

let demo: Demo;
let setup: BenchSetup;
let start: Run;
beforeAll(() => {
  demo = demoLedger();
  setup = benchSetup(demo, { code: 'a', isTester: false });
  const panel = { slug: 'kelpwright-plover', isNew: true, maker: 'kelpwright', model: 'Plover' };
  start = startRun({ id: 'run', date: '2026-11-25', panel }, setup);
});

/** The model of light takes its time, and is held against the build's elsewhere. */
const noLight = (): OpticsResult => ({ withheld: { code: 'not-worked-out' } });

const SOUND = {
  warmUp: '30 min',
  'field.width': '18 cm',
  'field.height': '28 cm',
  ...Object.fromEntries(
    [31.2, 40.3, 31.0, 39.6, 52.8, 39.2, 30.9, 40.1, 30.6].map((it, i) => [
      `grid.rows[${Math.floor(i / 3)}][${i % 3}]`,
      String(it),
    ]),
  ),
  'peak.red': '27.9',
  'peak.nearInfrared': '26.2',
  'peak.combined': '53.4',
  'mains.red': '52.8',
  'mains.nearInfrared': '53.9',
  'mains.combined': '104.2',
  'beyond[0].on': '7.8',
  'beyond[1].on': '0.5',
};

const entered = (readings: Readonly<Record<string, string>>, from: RunLog = newLog(start)) =>
  Object.entries(readings).reduce((log, [path, written]) => doAct(log, { kind: 'enter', path, written, at: '' }), from);
const work = (log: RunLog) => workRun(runOf(log), setup, undefined, noLight);
const odd = (advice: readonly Advice[]) =>
  advice.filter((it) => ['doubt', 'impossible'].includes(it.severity) && it.check !== 'beam-withheld');

test('sound readings raise nothing but what the next would gain', () => {
  const { problems, advice, panel, grid } = work(entered(SOUND));
  expect(problems).toEqual([]);
  expect(odd(advice)).toEqual([]);
  expect(advice.filter((it) => it.severity === 'help').map((it) => it.check)).toEqual([
    'next-repeat',
    'next-optical-power',
  ]);
  expect(grid).toEqual({ read: 9, of: 9 });
  expect(panel?.figures.get('efficiency-combined')).toMatchObject({ unit: '%' });
});

describe('what looks wrong is told at its entry, with the reason', () => {
  test.each<[string, Record<string, string>, string, string, RegExp]>([
    [
      'out of the meter’s range',
      { 'peak.combined': '1900' },
      'entry-range',
      'peak.combined',
      /more than the bench thermopile can show/,
    ],
    [
      'a slipped decimal point',
      { 'grid.rows[1][1]': '528' },
      'entry-unit-slip',
      'grid.rows[1][1]',
      /about 1\d times what its like read/,
    ],
    ['W/m² on the display', { 'peak.red': '279' }, 'entry-unit-slip', 'peak.red', /another unit on the meter/],
    [
      'a point against its row and column',
      { 'grid.rows[0][0]': '60' },
      'grid-outlier',
      'grid.rows[0][0]',
      /Grid point 1 of row 1/,
    ],
    ['channels that do not add up', { 'peak.red': '45' }, 'modes-add-up', 'peak', /add up to/],
    [
      'a peak below the mean',
      { 'peak.combined': '30' },
      'peak-above-mean',
      'peak.combined',
      /below the mean of the grid/,
    ],
    ['minutes typed as seconds', { warmUp: '30' }, 'warm-up-time', 'warmUp', /has not settled/],
    [
      'light past the edge',
      { 'beyond[0].on': '60' },
      'entry-beyond',
      'beyond[0].on',
      /more than the grid has along it/,
    ],
    ['light that rises outwards', { 'beyond[1].on': '9' }, 'entry-outwards', 'beyond[1].on', /light falls outwards/],
  ])('%s', (_what, readings, check, path, words) => {
    const { advice } = work(entered({ ...SOUND, ...readings }));
    const found = advice.find((it) => it.check === check && (it.path ?? '').startsWith(path));
    expect(advice.map((it) => `${it.check} ${it.path}`)).toContain(`${check} ${found?.path}`);
    expect(found && say(found.finding)).toMatch(words);
    expect(['doubt', 'impossible', 'note']).toContain(found?.severity);
  });

  test('draws that can’t all be right, at the one that is wrong', () => {
    const { advice } = work(entered({ ...SOUND, 'mains.combined': '1042', 'mains.standby': '70' }));
    expect(
      odd(advice)
        .filter((it) => it.path?.startsWith('mains'))
        .map((it) => `${it.check} ${it.path}`),
    ).toEqual(['draws-add-up mains.combined', 'draws-add-up mains.standby']);
  });

  test('a repeat that is far from the first; what was struck says nothing', () => {
    const log = entered({ 'grid.rows[1][1]': '74' }, entered(SOUND));
    const id = runOf(log).entries.at(-1)?.id ?? 0;
    expect(work(log).advice.find((it) => it.check === 'entry-repeats')).toMatchObject({
      path: 'grid.rows[1][1]',
      ids: [id],
    });
    expect(odd(work(doAct(log, { kind: 'strike', id, reason: 'hand slipped' })).advice)).toEqual([]);
    const accepted = work(doAct(log, { kind: 'accept', id, reason: 'read three times' })).advice;
    expect(accepted.find((it) => it.check === 'entry-repeats')?.severity).toBe('note');
  });

  test('a calibration that has run out, on the day of the run', () => {
    const late = { ...start, date: '2028-11-25' };
    const { advice } = work(
      entered(SOUND, newLog({ ...late, instruments: { ...late.instruments, irradiance: 'silicon-handheld' } })),
    );
    expect(advice.some((it) => it.check === 'calibration-valid')).toBe(true);
  });

  test('a second reading where one counts, a place that there is not, a warm-up that nobody noted', () => {
    const { advice } = work(
      entered({ 'mains.red': '50', 'peak.green': '3' }, entered({ 'mains.red': '52.8', 'peak.red': '27.9' })),
    );
    const told = Object.fromEntries(advice.map((it) => [it.check, say(it.finding)]));
    expect(told['entry-twice']).toContain('the last one counts, 50');
    expect(told['entry-place']).toContain('no field peak.green');
    expect(told['entry-warm-up']).toContain('is not noted');
  });
});

test('a grid that is half read has the mean of what is read, and waits with the model', () => {
  const { panel, grid, session, problems } = work(entered({ ...SOUND, 'grid.rows[2][2]': 'TODO' }));
  expect([grid, problems]).toEqual([{ read: 9, of: 9 }, []]);
  const some = Object.fromEntries(Object.entries(SOUND).filter(([path]) => !/rows\[2\]/.test(path)));
  const half = work(entered(some));
  const mean = half.session?.figures.get('mean-irradiance');
  expect(half.grid).toEqual({ read: 6, of: 9 });
  expect(isFigure(mean) && mean.value).toBeCloseTo((31.2 + 40.3 + 31.0 + 39.6 + 52.8 + 39.2) / 6, 9);
  expect(half.session?.figures.get('emitted-power')).toMatchObject({
    reason: { code: 'grid-not-all-read', read: 6, of: 9 },
  });
  expect(half.problems).toEqual([]);
  expect(half.advice.map((it) => it.check)).not.toContain('beam-withheld');
  expect(panel && session).toBeDefined();
});

test('a problem is at its place in the run', () => {
  const { problems } = work(entered({ ...SOUND, 'beyond[1].on': '3 kg', 'peak.red': '27,95,1' }));
  expect(problems.map((it) => it.path).toSorted()).toEqual(['beyond[1].on', 'peak.red']);
});

test('a panel that was there begins with the meters and settings of last time, and can carry over', () => {
  const slug = 'kelpwright-gannet';
  const file = benchPanelFile(demo, slug, { code: '', isTester: false });
  const run = startRun(
    { id: 'b', date: '2026-11-25', panel: { slug, isNew: false, maker: 'kelpwright', model: 'Gannet' }, file },
    setup,
  );
  expect(run).toMatchObject({ methodVersion: 2, grid: { rows: 3, columns: 3, inset: '1 in' } });
  expect(run.instruments.irradiance).toBe('bench-thermopile');
  expect(run.settings).toMatchObject({ distance: '6 in', 'sound.distance': '1 m', 'beyond[5].past': '40 cm' });
  expect(carriable(file, run.date)).toMatchObject({ light: '2026-11-17', mains: '2026-11-17', flicker: '2026-11-17' });
});

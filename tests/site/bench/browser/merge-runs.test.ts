import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mergeRuns } from '../../../../src/site/bench/browser/merge-runs.ts';
import { exportRun, importRun, padFileName } from '../../../../src/site/bench/browser/pad-file.ts';
import { doAct, newLog, type Run, redo, runOf, undo } from '../../../../src/site/bench/browser/run.ts';
import { anyActs, EMPTY_RUN } from './any-run.ts';

const entered = (readings: ReadonlyArray<readonly [path: string, written: string]>, start: Run = EMPTY_RUN) =>
  runOf(readings.reduce((log, [path, written]) => doAct(log, { kind: 'enter', path, written, at: '' }), newLog(start)));
const readings = ({ entries }: Run) => entries.map(({ path, written }) => [path, written]);

describe('two testers’ runs', () => {
  test('of different places are put together without a question', () => {
    const { run, conflicts } = mergeRuns(entered([['peak.red', '27']]), entered([['mains.red', '52.8']]));
    expect([readings(run), conflicts]).toEqual([
      [
        ['peak.red', '27'],
        ['mains.red', '52.8'],
      ],
      [],
    ]);
  });

  test('that agree in value agree, in whatever unit and with whatever decimal sign', () => {
    const mine = entered([
      ['peak.red', '27.5'],
      ['magnetic.on', '0.94'],
    ]);
    const theirs = entered([
      ['peak.red', '275 W/m2'],
      ['magnetic.on', '0,94 uT'],
    ]);
    expect(mergeRuns(mine, theirs).conflicts).toEqual([]);
  });

  test('of which one has more repeats of a point give all of them', () => {
    const path = 'grid.rows[0][0]';
    const { run, conflicts } = mergeRuns(
      entered([[path, '40']]),
      entered([
        [path, '40'],
        [path, '41'],
      ]),
    );
    expect([readings(run), conflicts]).toEqual([
      [
        [path, '40'],
        [path, '41'],
      ],
      [],
    ]);
  });

  test('that differ are listed field by field, and taken as somebody says', () => {
    const mine = {
      ...entered([
        ['peak.red', '27'],
        ['mains.red', '52'],
      ]),
      texts: { notes: 'Warm.' },
    };
    const theirs = {
      ...entered([
        ['peak.red', '28'],
        ['mains.red', '53'],
      ]),
      texts: { notes: 'Cold.' },
      instruments: { mains: 'other' },
    };
    const { run, conflicts } = mergeRuns(mine, theirs, { all: 'theirs', places: { 'peak.red': 'mine' } });
    expect(conflicts.map((it) => [it.path, it.mine, it.theirs, it.taken])).toEqual([
      ['instruments.mains', 'plug-in-wattmeter', 'other', 'theirs'],
      ['notes', 'Warm.', 'Cold.', 'theirs'],
      ['peak.red', '27', '28', 'mine'],
      ['mains.red', '52', '53', 'theirs'],
    ]);
    expect(readings(run)).toEqual([
      ['peak.red', '27'],
      ['mains.red', '53'],
    ]);
    expect(mergeRuns(mine, theirs).conflicts.every((it) => !it.isDecided && it.taken === 'mine')).toBe(true);
  });

  test('number their places past the edges by where they lie', () => {
    const settings = { 'beyond[0].edge': 'top', 'beyond[0].past': '20 cm' };
    const theirs = entered([['beyond[0].on', '0.4']], { ...EMPTY_RUN, settings });
    const { run } = mergeRuns(entered([['beyond[0].on', '7.8']]), theirs);
    expect(readings(run)).toEqual([
      ['beyond[0].on', '7.8'],
      ['beyond[1].on', '0.4'],
    ]);
  });

  test('either way round lose nothing, and a run put together with itself is itself', () => {
    fc.assert(
      fc.property(anyActs, anyActs, (a, b) => {
        const [mine, theirs] = [a, b].map((acts) =>
          runOf(acts.reduce((log, it) => (typeof it === 'string' ? log : doAct(log, it)), newLog(EMPTY_RUN))),
        ) as [Run, Run];
        const { run, conflicts } = mergeRuns(mine, theirs);
        const places = new Set(run.entries.map((it) => it.path));
        expect([...mine.entries, ...theirs.entries].every((it) => places.has(it.path))).toBe(true);
        expect(
          mergeRuns(theirs, mine)
            .conflicts.map((it) => it.path)
            .toSorted(),
        ).toEqual(conflicts.map((it) => it.path).toSorted());
        const same = mergeRuns(mine, structuredClone(mine));
        expect([same.conflicts, same.run.entries.length]).toEqual([[], mine.entries.length]);
      }),
      { numRuns: 50 },
    );
  });
});

test('a run goes through its file with all that was done and undone', () => {
  fc.assert(
    fc.property(anyActs, (acts) => {
      const log = acts.reduce(
        (it, act) => (act === 'undo' ? undo(it) : act === 'redo' ? redo(it) : doAct(it, act)),
        newLog(EMPTY_RUN),
      );
      expect(importRun(exportRun(log))).toEqual(log);
    }),
    { numRuns: 30 },
  );
  expect(padFileName(newLog(EMPTY_RUN))).toBe('kelpwright-plover-2026-11-25.bench.json');
});

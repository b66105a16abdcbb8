import { describe, expect, test } from 'vitest';
import { readColumn } from '../../../../../src/site/bench/browser/pad/column.ts';
import { gridOf, type Place, placesOf } from '../../../../../src/site/bench/browser/pad/places.ts';
import { usualUnit } from '../../../../../src/site/bench/browser/pad/typed.ts';
import { nextPlace, progressOf, readAt } from '../../../../../src/site/bench/browser/pad/way.ts';
import { isPlace } from '../../../../../src/site/bench/browser/places.ts';
import { doAct, newLog, type Run, runOf } from '../../../../../src/site/bench/browser/run.ts';
import { BEYOND_PLACES, SWEEP } from '../../../../../src/site/bench/browser/sheet-points.ts';

const SETTINGS = Object.fromEntries([
  ...BEYOND_PLACES.flatMap(({ index, edge, past }) => [
    [`beyond[${index}].edge`, edge],
    [`beyond[${index}].past`, `${past} cm`],
  ]),
  ...SWEEP.map((cm, i) => [`distances[${i}].distance`, `${cm} cm`]),
]);

const RUN: Run = {
  id: 'a',
  panel: { slug: 'kelpwright-plover', isNew: true, maker: 'kelpwright', model: 'Plover' },
  date: '2026-11-21',
  methodVersion: 2,
  instruments: { irradiance: 'bench-thermopile', mains: 'plug-in-wattmeter' },
  grid: { rows: 3, columns: 3, inset: '1 in' },
  settings: SETTINGS,
  carried: {},
  entries: [],
  texts: {},
  photos: [],
  isFinished: false,
};
const FIELD = { width: '18 cm', height: '28 cm' };
const placesIn = (run: Run) => placesOf(run, gridOf(run, FIELD));
const at = '2026-11-21T10:00:00Z';

/** The run after readings of so many places from one on. */
function withReadings(run: Run, paths: readonly string[]): Run {
  return runOf(paths.reduce((log, path) => doAct(log, { kind: 'enter', path, written: '40', at }), newLog(run)));
}

const ALL = placesIn({
  ...RUN,
  instruments: Object.fromEntries(
    ['irradiance', 'mains', 'magnetic', 'electric', 'radio', 'sound', 'flicker', 'spectrum', 'temperature'].map(
      (it) => [it, 'a-meter'],
    ),
  ),
});

describe('places', () => {
  test('are fields of a session, each once', () => {
    const paths = ALL.map((it) => it.path);
    expect(new Set(paths).size).toBe(paths.length);
    expect(paths.filter((it) => !isPlace(it))).toEqual([]);
    expect(paths.length).toBeGreaterThan(40);
  });

  test('of the grid are passed along the shortest way', () => {
    const grid = ALL.filter((it) => it.step === 'grid').map((it) => it.path.slice(9));
    expect(grid).toEqual(['[0][0]', '[0][1]', '[0][2]', '[1][2]', '[1][1]', '[1][0]', '[2][0]', '[2][1]', '[2][2]']);
  });

  test('without a meter are left out, and so are those that an earlier session stands for', () => {
    const kinds = new Set(placesIn(RUN).map((it) => it.kind));
    expect([...kinds].filter((it) => it !== undefined).toSorted()).toEqual(['irradiance', 'mains']);
    const carried = placesIn({ ...RUN, carried: { mains: '2026-11-10' } });
    expect(carried.filter((it) => it.kind === 'mains')).toEqual([]);
    expect(carried.some((it) => it.step === 'grid')).toBe(true);
    expect(placesIn({ ...RUN, carried: { light: '2026-11-10' } }).filter((it) => it.quantity === 'irradiance')).toEqual(
      [],
    );
  });

  test('that were read stay in sight, whatever is chosen later', () => {
    const run = withReadings(RUN, ['mains.standby']);
    expect(placesIn({ ...run, instruments: {} }).map((it) => it.path)).toContain('mains.standby');
  });
});

describe('the next place', () => {
  const places = placesIn(RUN);
  const first = places.findIndex((it) => it.step === 'grid');
  const indexOf = (path: string) => places.findIndex((it) => it.path === path);

  test('goes round the grid until each point has as many readings as are wanted, and then on', () => {
    let run = RUN;
    let now = first;
    const way: string[] = [];
    while (places[now]?.step === 'grid') {
      way.push((places[now] as Place).path);
      run = withReadings(run, [(places[now] as Place).path]);
      now = nextPlace(places, run, now, 2);
      expect(way.length).toBeLessThan(30);
    }
    expect(way).toHaveLength(18);
    expect(way.slice(0, 9)).toEqual(way.slice(9));
    expect(places[now]?.path).toBe('beyond[0].on');
  });

  test('skips what has been read, and passes by what was left out', () => {
    const run = withReadings(RUN, ['peak.combined', 'mains.combined']);
    expect(places[nextPlace(places, run, indexOf('peak.combined'), 1)]?.path).toBe('peak.red');
    expect(nextPlace(places, run, places.length - 1, 1)).toBe(places.length - 1);
  });

  test('counts a place whose reading was struck as one without', () => {
    const read = withReadings(RUN, ['peak.combined']);
    const struck = { ...read, entries: read.entries.map((it) => ({ ...it, struck: 'slipped' })) };
    expect(readAt(struck, places[indexOf('peak.combined')] as Place)).toEqual([]);
    expect(progressOf(read, places).read - progressOf(struck, places).read).toBe(1);
  });
});

describe('a pasted column', () => {
  const places = placesIn(RUN);
  const first = places.findIndex((it) => it.step === 'grid');
  const read = (text: string, from = first) => readColumn(text, places, from, RUN.grid, usualUnit);
  const short = (text: string, from?: number) =>
    read(text, from).map((it) => `${it.place?.path ?? '-'} ${it.written ?? 'no'}`);

  test('goes line by line along the way; a heading takes no place', () => {
    expect(short('E in mW\n31,2\n\n40.3\n31\n39')).toEqual([
      '- no',
      'grid.rows[0][0] 31.2',
      'grid.rows[0][1] 40.3',
      'grid.rows[0][2] 31',
      'grid.rows[1][2] 39',
    ]);
  });

  test('a block of the grid’s shape is laid on it as it stands', () => {
    expect(short('1\t2\t3\n4\t5\t6\n7\t8\t9').slice(3, 6)).toEqual([
      'grid.rows[1][0] 4',
      'grid.rows[1][1] 5',
      'grid.rows[1][2] 6',
    ]);
  });

  test('what can’t be a reading, and what finds no place, is kept with its reason', () => {
    const values = read('40 W\n40');
    expect(values[0]).toMatchObject({ text: '40 W', place: { path: 'grid.rows[0][0]' } });
    expect(values[0]?.fault).toContain('a unit of a power');
    expect(values[1]).toMatchObject({ written: '40', place: { path: 'grid.rows[0][1]' } });
    expect(read('1\n2', places.length - 1)[1]?.fault).toBe('There is no place left for it.');
  });
});

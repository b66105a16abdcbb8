/** Runs and what testers do in them, for property tests. */
import fc from 'fast-check';
import type { BenchSetup } from '../../../../src/site/bench/browser/bench-data.ts';
import type { Act, Run } from '../../../../src/site/bench/browser/run.ts';

/** A run of a new panel with nothing read yet. */
export const EMPTY_RUN: Run = {
  id: 'run',
  panel: { slug: 'kelpwright-plover', isNew: true, maker: 'kelpwright', model: 'Plover' },
  date: '2026-11-25',
  methodVersion: 2,
  instruments: { irradiance: 'bench-thermopile', mains: 'plug-in-wattmeter' },
  grid: { rows: 2, columns: 2, inset: '1 in' },
  settings: {
    distance: '6 in',
    'beyond[0].edge': 'right',
    'beyond[0].past': '8 cm',
    'beyond[1].edge': 'top',
    'beyond[1].past': '20 cm',
    'distances[0].distance': '10 cm',
    'distances[1].distance': '30 cm',
    'magnetic.distance': '6 in',
  },
  carried: {},
  entries: [],
  texts: { notes: 'The fan started: after ten minutes; (loud).' },
  photos: [],
  isFinished: false,
};

/** As much of a guide as a content file is made with. */
export const SETUP = { guide: { data: { currency: 'EUR' } }, panels: [] } as unknown as BenchSetup;

export const PLACES = [
  ...['grid.rows[0][0]', 'grid.rows[0][1]', 'grid.rows[1][0]', 'grid.rows[1][1]', 'grid.rows[7][0]'],
  ...['peak.red', 'peak.combined', 'mains.standby', 'beyond[0].on', 'beyond[0].off', 'beyond[1].on'],
  ...['distances[1].centre', 'distances[1].nearInfrared', 'magnetic.off', 'magnetic.on', 'flicker.red.frequency'],
  ...['wavelengths.red.fwhm', 'warmUp', 'roomTemperature', 'field.width', 'field.height', 'weight', 'peak.green'],
];

const written = fc.oneof(
  fc.double({ min: 0.01, max: 2000, noNaN: true }).map((it) => String(Number(it.toPrecision(4)))),
  fc.constantFrom(
    '41.20',
    '0.50',
    '<0.1',
    '41 mW/cm2',
    '6 in',
    '41,2',
    '1e3',
    '7 1/2 in',
    'OL',
    'TODO',
    '1,234',
    'a: b, [c',
  ),
);
const text = fc
  .oneof(
    fc.constantFrom('hand slipped', 'too near (again); odd = yes', 'a\\b', 'read: twice.', '#1', '"quoted"'),
    fc
      .string({ minLength: 1, maxLength: 12 })
      .filter((it) => it.trim() !== '' && it.trim().toUpperCase() !== 'TODO' && !/\p{C}/u.test(it)),
  )
  .map((it) => it.trim());
const id = fc.integer({ min: 1, max: 12 });

/** Anything that a tester does with readings, undoing and redoing among it. */
export const anyActs = fc.array(
  fc.oneof(
    {
      weight: 6,
      arbitrary: fc.record({
        kind: fc.constant('enter' as const),
        path: fc.constantFrom(...PLACES),
        written,
        at: fc.constant(''),
      }),
    },
    fc.record({ kind: fc.constant('strike' as const), id, reason: text }),
    fc.record({ kind: fc.constant('unstrike' as const), id }),
    fc.record({ kind: fc.constant('accept' as const), id, reason: text }),
    fc.record({ kind: fc.constant('correct' as const), id, written, reason: text, at: fc.constant('') }),
    fc.constant('undo' as const),
    fc.constant('redo' as const),
  ),
  { maxLength: 25 },
) as fc.Arbitrary<Array<Act | 'undo' | 'redo'>>;

import { expect, test } from 'vitest';
import { keysAt } from '../../../../src/content/schema/inspect.ts';
import { sessionSchema } from '../../../../src/content/schema/session.ts';
import { readsAt } from '../../../../src/site/bench/browser/entry-values.ts';
import { isPlace, isSetting } from '../../../../src/site/bench/browser/places.ts';
import { EMPTY_RUN, PLACES } from './any-run.ts';

/** Every field of a session that holds one value, by its path; lists by their first entry. */
function leaves(keys: Array<string | number> = []): string[] {
  return keysAt(sessionSchema, keys).flatMap((key) => {
    const own = [...keys, key];
    if (keysAt(sessionSchema, own).length > 0) return leaves(own);
    if (keysAt(sessionSchema, [...own, 0]).length > 0) return leaves([...own, 0]);
    return [own.map((it, i) => (typeof it === 'number' ? `[${it}]` : i > 0 ? `.${it}` : it)).join('')];
  });
}

test('every field of a session is read, set, or said elsewhere in a run', () => {
  const others = leaves().filter((it) => !isPlace(it) && !isSetting(it));
  const elsewhere =
    /^(date|methodVersion|draft|notes|hotSpots|grid\.(inset|rows)|(instruments|carried|photos)\b.*)$|\.(value|struck)$/;
  // What instruments wrote lies in files, which the pad leaves to the desk.
  const ofFiles = /^(spectra|sweeps|warmUpLog|waveforms|wallPhoto|soundClips|otherFiles)\b/;
  expect(others.filter((it) => !elsewhere.test(it) && !ofFiles.test(it))).toEqual([]);
  expect(leaves().filter(isPlace).length).toBeGreaterThan(30);
});

test.each([
  'peak',
  'grid',
  'grid.rows',
  'grid.inset',
  'peak.green',
  'sessions[0].peak.red',
  'beyond[0].edge',
  'notes',
  'constructor',
  '',
])('%j is no place for a reading', (path) => expect(isPlace(path)).toBe(false));

test('every place has its quantity, and every setting of a run is one', () => {
  expect(PLACES.filter((it) => isPlace(it) && !readsAt(it))).toEqual([]);
  expect(Object.keys(EMPTY_RUN.settings).filter((it) => !isSetting(it))).toEqual([]);
});

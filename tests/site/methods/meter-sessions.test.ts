import { expect, test } from 'vitest';
import type { InstrumentEntry } from '../../../src/ledger/ledger.ts';
import { sessionLists } from '../../../src/site/methods/meter-sessions.ts';

const used = (days: readonly number[]) =>
  days.map((day) => ({ slug: 'plover', name: 'Plover', date: `2026-10-0${day}`, carriedInto: [] }));
const meter = (id: string, days: readonly number[]) =>
  ({ id, data: { name: `The ${id}` }, usedIn: used(days) }) as unknown as InstrumentEntry;

const first = meter('thermopile', [1, 2, 3, 4]);
const same = meter('coil', [1, 2, 3, 4]);
const other = meter('wattmeter', [1, 2, 3, 5]);
const few = [meter('tape', [1, 2]), meter('clock', [1, 2])] as const;
const sessionsOf = sessionLists({ instruments: [first, same, other, ...few] });

test('sessions are listed once where meters were used in the same ones', () => {
  expect(sessionsOf(first)).toEqual({ count: 4, own: first.usedIn });
  expect(sessionsOf(same)).toEqual({ count: 4, own: [], said: { id: 'thermopile', name: 'The thermopile' } });
});

test('other sessions, and few of them, are listed where they belong', () => {
  expect(sessionsOf(other)).toEqual({ count: 4, own: other.usedIn });
  for (const it of few) expect(sessionsOf(it)).toEqual({ count: 2, own: it.usedIn });
});

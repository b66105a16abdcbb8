import type { TextRef } from '../shared/browser/text-ref.ts';
import type { UsedInstruments } from './instruments-data.ts';
import type { ReadingEntry } from './reading-rows.ts';
import type { SharedPlaces } from './shared-places.ts';

/** What the rows of limits of many sessions are of. */
export type LimitEntry = readonly [
  figure: string,
  title: TextRef,
  background: number,
  limit: string | null,
  caution: number,
];

/** What rows are of, in their order, and which meters read: said once for all sessions that have the same. */
export function lists({ table }: SharedPlaces) {
  const list = <Entry>() => table<readonly Entry[]>((entries) => JSON.stringify(entries));
  return {
    figures: list<string>(),
    readings: list<ReadingEntry>(),
    limits: list<LimitEntry>(),
    instruments: table<UsedInstruments>((it) => JSON.stringify(it)),
  };
}
export type Lists = ReturnType<typeof lists>;

/** Rows behind the place of the list that says what each of them is of. */
export function listed<Entry, Row>(
  entries: ReadonlyArray<readonly [Entry, Row]>,
  table: { placeOf(list: readonly Entry[]): number },
): [place: number, ...rows: Row[]] {
  return [table.placeOf(entries.map(([entry]) => entry)), ...entries.map(([, row]) => row)];
}

import { z } from 'zod';
import { problemAt, texts } from '../read/fields.ts';
import type { CollectionName } from '../schema/collections.ts';
import { INSTRUMENT_KINDS } from '../schema/instrument-kinds.ts';
import type { Rule } from './rule.ts';

/** Where days stand in the files; none of them can lie ahead. */
const DATES: ReadonlyArray<readonly [CollectionName, ...string[]]> = [
  ['guide', 'tariff', 'date'],
  ['guide', 'rates', '*', 'date'],
  ['instruments', 'calibrations', '*', 'date'],
  ...INSTRUMENT_KINDS.map((kind) => ['instruments', 'quantities', kind, 'calibrations', '*', 'date'] as const),
  ['standards', 'readings', '*', 'date'],
  ['standards', 'restarts', '*', 'date'],
  ['panels', 'prices', '*', 'date'],
  ['panels', 'sessions', '*', 'date'],
  ['panels', 'claims', 'date'],
  ['panels', 'statusDate'],
  ['methods', 'versions', '*', 'date'],
  ['corrections', 'corrections', '*', 'date'],
];

/** What is wanted of a day. */
export const notAhead = (today: string): string => `a day that is not in the future (today is ${today})`;

/** Nothing was measured, bought or changed on a day that is still to come. */
export const daysNotAhead: Rule = {
  id: 'days-not-ahead',
  run: (content, { today }) =>
    DATES.flatMap(([collection, ...keys]) =>
      [...content[collection].values()].flatMap((source) =>
        // A guide may be built for a day before the product's texts were written.
        (source.isProducts ? [] : texts(source, ...keys))
          .filter(({ value }) => z.iso.date().safeParse(value).success && value > today)
          .map((field) => problemAt(source, field, notAhead(today))),
      ),
    ),
};

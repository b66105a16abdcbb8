import { meant, problemAt } from '../read/fields.ts';
import { INSTRUMENT_QUANTITY } from '../schema/instrument-kinds.ts';
import { nearest } from '../schema/suggest.ts';
import { normaliseUnit, QUANTITIES } from '../schema/units.ts';
import type { Rule } from './rule.ts';
import { statedQuantities } from './stated-quantities.ts';

/** An instrument's display shows a unit of what it measures. */
export const instrumentUnits: Rule = {
  id: 'instrument-units',
  run: ({ instruments: known }) =>
    [...known.values()].flatMap((source) =>
      statedQuantities(source).flatMap(({ kind, of }) => {
        const units = Object.keys(QUANTITIES[INSTRUMENT_QUANTITY[kind]].units);
        return of('unit').flatMap((field) => {
          const { value } = field;
          if (typeof value !== 'string' || units.includes(normaliseUnit(value))) return [];
          const wanted = `a unit of what it measures: ${units.join(', ')}`;
          return [problemAt(source, field, wanted, meant(nearest(value, units)))];
        });
      }),
    ),
};

import { meant, problemAt, texts } from '../read/fields.ts';
import { INSTRUMENT_KINDS } from '../schema/instrument.ts';
import { INSTRUMENT_QUANTITY } from '../schema/instrument-units.ts';
import { nearest } from '../schema/suggest.ts';
import { normaliseUnit, QUANTITIES } from '../schema/units.ts';
import type { Rule } from './rule.ts';

/** An instrument's display shows a unit of what it measures. */
export const instrumentUnits: Rule = {
  id: 'instrument-units',
  run: ({ instruments: known }) =>
    [...known.values()].flatMap((source) => {
      const kind = INSTRUMENT_KINDS.find((it) => it === texts(source, 'measures')[0]?.value);
      if (!kind) return [];
      const units = Object.keys(QUANTITIES[INSTRUMENT_QUANTITY[kind]].units);
      return texts(source, 'unit')
        .filter(({ value }) => !units.includes(normaliseUnit(value)))
        .map((field) =>
          problemAt(
            source,
            field,
            `a unit of what it measures: ${units.join(', ')}`,
            meant(nearest(field.value, units)),
          ),
        );
    }),
};

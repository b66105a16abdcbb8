import { fields, problemAt, texts } from '../read/fields.ts';
import { INSTRUMENT_KINDS, KIND_FIELDS } from '../schema/instrument-kinds.ts';
import type { Rule } from './rule.ts';

/** A file states nothing that only another kind of instrument can have; the schema sees to the blocks of several. */
export const fieldsOfTheirKind: Rule = {
  id: 'fields-of-their-kind',
  run: ({ instruments: known }) =>
    [...known.values()].flatMap((source) => {
      const kind = INSTRUMENT_KINDS.find((it) => it === texts(source, 'measures')[0]?.value);
      if (!kind) return [];
      return Object.entries(KIND_FIELDS).flatMap(([name, only]) =>
        fields(source.data, [name])
          .filter(() => kind !== only)
          .map((field) =>
            problemAt(
              source,
              field,
              `no such field: it is for instruments that measure ${only}, this one measures ${kind}`,
            ),
          ),
      );
    }),
};

import { procedureVersions } from '../../measure/irradiance/bench-procedure.ts';
import { fields, problemAt } from '../read/fields.ts';
import type { Source } from '../read/source.ts';
import type { Rule } from './rule.ts';

/** The guide and the sessions name versions of the bench procedure that exist. */
export const procedureKnown: Rule = {
  id: 'procedure-known',
  run: ({ panels, guide }) => {
    const known = procedureVersions();
    const unknown = (source: Source, ...keys: string[]) =>
      fields(source.data, keys)
        .filter(({ value }) => typeof value === 'number' && value >= 1 && !known.includes(value))
        .map((field) => problemAt(source, field, `a version of the bench procedure that exists: ${known.join(', ')}`));
    return [
      ...[...guide.values()].flatMap((source) => unknown(source, 'methodVersion')),
      ...[...panels.values()].flatMap((source) => unknown(source, 'sessions', '*', 'methodVersion')),
    ];
  },
};

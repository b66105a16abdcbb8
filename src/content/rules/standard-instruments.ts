import { meant, problemAt, texts } from '../read/fields.ts';
import { nearest } from '../schema/suggest.ts';
import type { Rule } from './rule.ts';

/** The meter that reads a check standard has a file. */
export const standardInstruments: Rule = {
  id: 'standard-instruments',
  run: ({ standards, instruments }, { shownAs, unread }) =>
    [...standards.values()].flatMap((standard) =>
      texts(standard, 'instrument').flatMap((field) => {
        const id = field.value;
        if (instruments.has(id) || unread.has(`${shownAs}/instruments/${id}.yaml`)) return [];
        const known = [...instruments.keys()];
        const wanted = `an instrument that has a file in ${shownAs}/instruments: ${known.join(', ') || 'there is none yet'}`;
        const hint = meant(nearest(id, known)) ?? `write ${shownAs}/instruments/${id}.yaml`;
        return [problemAt(standard, field, wanted, hint)];
      }),
    ),
};

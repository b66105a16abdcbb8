import { meant, problemAt, texts } from '../read/fields.ts';
import { nearest } from '../schema/suggest.ts';
import type { Rule } from './rule.ts';

/** A panel's maker has a file. */
export const makersKnown: Rule = {
  id: 'makers-known',
  run: ({ panels, makers: known }, { shownAs, unread }) =>
    [...panels.values()].flatMap((panel) =>
      texts(panel, 'maker')
        .filter(({ value }) => !known.has(value) && !unread.has(`${shownAs}/makers/${value}.yaml`))
        .map((field) =>
          problemAt(
            panel,
            field,
            `a maker that has a file in ${shownAs}/makers: ${[...known.keys()].join(', ') || 'there is none yet'}`,
            meant(nearest(field.value, [...known.keys()])) ?? `write ${shownAs}/makers/${field.value}.yaml`,
          ),
        ),
    ),
};

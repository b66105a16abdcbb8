import { fields, problemAt, texts } from '../read/fields.ts';
import type { Rule } from './rule.ts';

/** A share of a level in decibels means nothing: the level's zero is a convention. */
export const soundInDecibels: Rule = {
  id: 'sound-in-decibels',
  run: ({ instruments: known }) =>
    [...known.values()].flatMap((source) => {
      if (texts(source, 'measures')[0]?.value !== 'sound') return [];
      return [...fields(source.data, ['calibrations', '*', 'relative']), ...fields(source.data, ['repeatability'])]
        .filter(({ value }) => value !== 0)
        .map((field) =>
          problemAt(
            source,
            field,
            '0, or no such field: a level in dB has no share of the reading; state it in dB, as absolute or repeatabilityDecibels',
          ),
        );
    }),
};

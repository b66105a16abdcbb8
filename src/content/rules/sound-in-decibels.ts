import { problemAt } from '../read/fields.ts';
import type { Rule } from './rule.ts';
import { statedQuantities } from './stated-quantities.ts';

/** A share of a level in decibels means nothing: the level's zero is a convention. */
export const soundInDecibels: Rule = {
  id: 'sound-in-decibels',
  run: ({ instruments: known }) =>
    [...known.values()].flatMap((source) => {
      const sound = statedQuantities(source).find((it) => it.kind === 'sound');
      if (!sound) return [];
      return [...sound.of('calibrations', '*', 'relative'), ...sound.of('repeatability')]
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

import { problemAt, texts } from '../read/fields.ts';
import type { Rule } from './rule.ts';

/** A session is known by its day. */
export const oneSessionADay: Rule = {
  id: 'one-session-a-day',
  run: ({ panels }) =>
    [...panels.values()].flatMap((panel) => {
      const seen = new Set<string>();
      return texts(panel, 'sessions', '*', 'date').flatMap((field) => {
        if (!seen.has(field.value)) {
          seen.add(field.value);
          return [];
        }
        return [problemAt(panel, field, 'one session a day: merge the two, or correct the date')];
      });
    }),
};

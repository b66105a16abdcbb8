import { problemAt, texts } from '../read/fields.ts';
import type { Rule } from './rule.ts';

/** The newest price is used, and a price is known by its day: of two on one day nobody can say which. */
export const onePriceADay: Rule = {
  id: 'one-price-a-day',
  run: ({ panels }) =>
    [...panels.values()].flatMap((panel) => {
      const seen = new Set<string>();
      return texts(panel, 'prices', '*', 'date').flatMap((field) => {
        if (!seen.has(field.value)) {
          seen.add(field.value);
          return [];
        }
        return [
          problemAt(
            panel,
            field,
            'one price a day: keep the one that a buyer would pay, or correct the date',
            'list and paid of one day stand in one entry',
          ),
        ];
      });
    }),
};

import { problemAt, texts } from '../read/fields.ts';
import type { Rule } from './rule.ts';

/** Each foreign currency has one rate. */
export const ratesOnce: Rule = {
  id: 'rates-once',
  run: ({ guide }) =>
    [...guide.values()].flatMap((source) => {
      const base = texts(source, 'currency')[0]?.value;
      const seen = new Set<string>();
      return texts(source, 'rates', '*', 'currency').flatMap((field) => {
        const twice = seen.has(field.value);
        seen.add(field.value);
        if (field.value === base)
          return [problemAt(source, field, `a currency other than the base currency: its own rate is 1`)];
        return twice ? [problemAt(source, field, 'one rate a currency; keep the newest')] : [];
      });
    }),
};

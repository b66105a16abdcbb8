import { problemAt, texts } from '../read/fields.ts';
import type { Rule } from './rule.ts';

/** A price is in a currency that the guide can convert. What is no code of a currency at all, the schema says. */
export const currenciesKnown: Rule = {
  id: 'currencies-known',
  run: ({ guide, panels }, { shownAs }) => {
    const [source] = guide.values();
    const base = source && texts(source, 'currency')[0];
    // A guide that names no currency has a problem of its own, which each price would echo.
    if (!base) return [];
    const known = [base, ...texts(source, 'rates', '*', 'currency')].map((it) => it.value);
    return [...panels.values()].flatMap((panel) =>
      texts(panel, 'prices', '*', 'currency')
        .filter(({ value }) => !known.includes(value) && /^[A-Z]{3}$/.test(value))
        .map((field) =>
          problemAt(
            panel,
            field,
            `a currency that the guide can convert: ${known.join(', ')}`,
            `add a rate for ${field.value} to ${shownAs}/guide.yaml`,
          ),
        ),
    );
  },
};

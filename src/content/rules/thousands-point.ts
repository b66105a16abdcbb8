import { fields, problemAt } from '../read/fields.ts';
import type { Rule } from './rule.ts';

/** Where no such number stands anywhere in a file, its lines need not be looked at. */
const ANYWHERE = /\b(?:list|paid)\s*:\s*\d{1,3}\.\d{3}(?![\d.])/;

/**
 * `4.790` is 4790 to half of the world, and 4.79 to the YAML reader. No price has three decimals, but for the few
 * currencies that are divided into a thousand.
 */
export const thousandsPoint: Rule = {
  id: 'thousands-point',
  run: ({ panels }) =>
    [...panels.values()].flatMap((panel) => {
      if (!ANYWHERE.test(panel.yaml)) return [];
      const lines = panel.yaml.split('\n');
      return fields(panel.data, ['prices', '*']).flatMap(({ path, value }) => {
        if (hasThousandths(fields(value, ['currency'])[0]?.value)) return [];
        return (['list', 'paid'] as const).flatMap((key) =>
          fields(value, [key], path).flatMap((field) => {
            const line = lines[panel.lineOf(field.path) - panel.yamlLine] ?? '';
            const typed = [...line.matchAll(new RegExp(`\\b${key}\\s*:\\s*(\\d{1,3}\\.\\d{3})(?![\\d.])`, 'g'))]
              .flatMap(([, number]) => number ?? [])
              .find((number) => Number(number) === field.value);
            if (typed === undefined) return [];
            const whole = typed.replace('.', '');
            return [
              {
                ...problemAt(
                  panel,
                  field,
                  `a price without a sign between thousands, and with two decimals at most`,
                  `write ${whole}, or ${Number(typed).toFixed(2)} if that is the price`,
                ),
                found: typed,
              },
            ];
          }),
        );
      });
    }),
};

function hasThousandths(currency: unknown): boolean {
  if (typeof currency !== 'string' || !/^[A-Z]{3}$/.test(currency)) return false;
  return (
    (new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2) > 2
  );
}

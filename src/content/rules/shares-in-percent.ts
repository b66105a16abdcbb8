import { type Field, fields, problemAt } from '../read/fields.ts';
import type { Source } from '../read/source.ts';
import type { Problem } from '../schema/problem.ts';
import { parseQuantity } from '../schema/quantity.ts';
import type { Rule } from './rule.ts';

/** Lists of which each item may state its share of the whole. */
export const SHARES = [
  ['claims', 'wavelengths'],
  ['leds', 'groups'],
] as const;

/** How far from 1 a sum may lie and still be one of fractions: 0.33 three times, and a label's own rounding. */
const AROUND_ONE = 0.1;

/** The share of every item of a list in %; undefined where one has none that can be read. */
export function sharesOf(list: Field): Array<Field & { percent: number }> | undefined {
  if (!Array.isArray(list.value) || list.value.length === 0) return undefined;
  const shares = fields(list.value, ['*', 'share'], list.path).flatMap((field) => {
    if (typeof field.value !== 'number' && typeof field.value !== 'string') return [];
    const parsed = parseQuantity(field.value, 'percent');
    return 'reading' in parsed ? [{ ...field, percent: parsed.reading.value }] : [];
  });
  return shares.length === list.value.length ? shares : undefined;
}

/** Shares of a whole that add up to 1 are fractions; the fields are in percent. */
export const sharesInPercent: Rule = {
  id: 'shares-in-percent',
  run: ({ panels }) =>
    [...panels.values()].flatMap((panel) =>
      SHARES.flatMap((keys) => fields(panel.data, keys).flatMap((list) => fractions(panel, list))),
    ),
};

function fractions(panel: Source, list: Field): Problem[] {
  const shares = sharesOf(list);
  const [first] = shares ?? [];
  if (!shares || !first) return [];
  const sum = shares.reduce((total, { percent }) => total + percent, 0);
  if (Math.abs(sum - 1) > AROUND_ONE) return [];
  const percent = Number((100 * first.percent).toPrecision(4));
  return [
    problemAt(
      panel,
      first,
      `shares in %; these add up to ${Number(sum.toPrecision(3))} %`,
      `fractions? write ${percent} for ${first.percent}`,
    ),
  ];
}

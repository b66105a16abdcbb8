import { z } from 'zod';
import { curly } from './curly.ts';
import { described, type Limits, limitWords } from './described.ts';
import { parseQuantity, type QuantityLimits, type Reading, wantedQuantity } from './quantity.ts';
import { quantityKeywords } from './quantity-pattern.ts';
import { QUANTITIES, type QuantityKind, type QuantityName } from './units.ts';

/** What our own checks say of a field, for the list of problems (wording.ts). */
export interface IssueParams {
  wanted: string;
  hint?: string;
  /** What was found, where that is more than the value. */
  found?: string;
}

/**
 * Refuses what is looked at in a refinement or a transformation.
 *
 * @param path from there to the field that is refused
 */
export function refuse(context: z.RefinementCtx, params: IssueParams, path: PropertyKey[] = []): void {
  context.addIssue({ code: 'custom', message: params.wanted, path, params });
}

/**
 * Examples of what may be written; editors offer them, and new files have the first. They belong to the innermost schema,
 * which takes what is written: JSON Schema leaves out those of one that makes something else of it.
 */
const examplesOf = (example: unknown) => (example === undefined ? {} : { examples: [example] });

/**
 * A field that holds a quantity: a number in the canonical unit or a text with its unit.
 *
 * @param example as a tester would write it
 * @param highest that is told of, where a refinement takes less than `limits.max`
 */
export function quantity(
  name: QuantityName,
  meaning: string,
  limits: QuantityLimits = {},
  example?: number | string,
  highest = limits.max,
) {
  const schema = z
    .union([z.number(), z.string()], { error: () => wantedQuantity(name) })
    .meta(examplesOf(example))
    .transform((input, context): Reading => {
      const result = parseQuantity(input, name, limits);
      if ('reading' in result) return result.reading;
      refuse(context, result.fault);
      return z.NEVER;
    });
  const rule = [
    unitWords(QUANTITIES[name]),
    limitWords({ ...limits, max: highest }, QUANTITIES[name].typed),
    limits.bounds && BOUND,
  ];
  return described(schema, meaning, {
    rule: rule.filter(Boolean).join('; '),
    ...quantityKeywords(name, { ...limits, ...(highest !== undefined && { max: highest }) }),
    // Editors that know it say this in place of the pattern.
    patternErrorMessage: wantedQuantity(name),
  });
}

const BOUND = 'a bound such as <0.1 stays one';

/** In which unit a bare number is, and which others may be written; one name for spellings of the same unit. */
function unitWords({ typed, units }: QuantityKind): string {
  const others = Object.entries(units).filter(
    ([unit, { factor, offset }], i, all) =>
      unit !== typed &&
      !(factor === units[typed]?.factor && offset === units[typed]?.offset) &&
      all.findIndex(([, it]) => it.factor === factor && it.offset === offset) === i,
  );
  return others.length === 0 ? `in ${typed}` : `in ${typed}, or with its unit (${others.map(([it]) => it).join(', ')})`;
}

/** A bare number; the meaning says in which unit. */
export function number(meaning: string, limits: Limits = {}, example?: number) {
  const { min, max, positive } = limits;
  let schema = z.number();
  if (positive) schema = schema.positive();
  if (min !== undefined) schema = schema.min(min);
  if (max !== undefined) schema = schema.max(max);
  return described(schema, meaning, { rule: limitWords(limits), ...examplesOf(example) });
}

/** A whole number above zero, such as a count. */
export function count(meaning: string, most?: number, example?: number) {
  const schema = most === undefined ? z.int().positive() : z.int().positive().max(most);
  const rule = most === undefined ? 'a whole number from 1' : `a whole number from 1 to ${most}`;
  return described(schema, meaning, { rule, minimum: 1, ...examplesOf(example) });
}

/**
 * A calendar day, `YYYY-MM-DD`. YAML readers of the older schema turn an unquoted day into a Date; it is the
 * same day. That a day is not in the future is checked where today is known (rules/days-not-ahead.ts).
 */
export function isoDate(meaning: string, example = '2026-11-20') {
  const schema = z.preprocess(
    (value) => (value instanceof Date && !Number.isNaN(value.getTime()) ? value.toISOString().slice(0, 10) : value),
    z.iso.date({ error: () => 'a day as YYYY-MM-DD' }).meta(examplesOf(example)),
  );
  return described(schema, meaning, { rule: 'YYYY-MM-DD' });
}

/** A reference to another content file: its name without the ending. */
export function fileReference(meaning: string, example?: string) {
  return described(notBlank(), meaning, examplesOf(example));
}

function notBlank() {
  return z.string().regex(/\S/, { error: () => 'a text that is not empty' });
}

/** Signs that one currency alone has, or nearly so. */
const SIGNS: Readonly<Record<string, string>> = { '€': 'EUR', '£': 'GBP' };

/** A three-letter code of ISO 4217, as Intl knows them. */
export function currency(meaning: string) {
  const codes = Intl.supportedValuesOf('currency');
  const schema = z.string().superRefine((code, context) => {
    if (codes.includes(code)) return;
    const meant = SIGNS[code.trim()] ?? code.trim().toUpperCase();
    const hint = codes.includes(meant) ? { hint: `write ${meant}` } : {};
    refuse(context, { wanted: 'a currency code of ISO 4217, such as EUR', ...hint });
  });
  return described(schema, meaning, { rule: 'a code of ISO 4217', enum: codes, examples: ['EUR'] });
}

/** A web address; only https and http, so that no script hides in a link. */
export function webAddress(meaning: string, example?: string) {
  const schema = z.url({ protocol: /^https?$/, error: () => 'a web address that starts with https://' });
  return described(schema, meaning, { rule: 'starts with https://', pattern: '^https?://', ...examplesOf(example) });
}

/** A name or another text that stays as it is written. */
export function text(meaning: string, example?: string) {
  return described(notBlank(), meaning, examplesOf(example));
}

/** A sentence or more for readers, its quotes as the notes under it have theirs. */
export function prose(meaning: string, example?: string) {
  return described(notBlank().overwrite(curly), meaning, examplesOf(example));
}

/** One line. */
export function line(meaning: string, longest: number, example?: string) {
  const schema = notBlank().max(longest, { error: () => `a text of at most ${longest} letters` });
  return described(schema, meaning, { rule: `at most ${longest} letters`, ...examplesOf(example) });
}

/** What a name may be made of that is part of an address. */
export const SLUG = /^[a-z0-9]+(-[a-z0-9]+)*$/;

/** Names that an entry had before. */
export function formerNames(meaning: string) {
  const wanted = 'lower-case letters, digits and single hyphens, as in a name of before';
  return z
    .array(
      z
        .string()
        .regex(SLUG, { error: () => wanted })
        .meta(examplesOf('kelp-plover')),
    )
    .min(1)
    .describe(meaning);
}

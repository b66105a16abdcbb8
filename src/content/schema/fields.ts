import { z } from 'zod';
import { parseQuantity, type QuantityLimits, type Reading, wantedQuantity } from './quantity.ts';
import type { QuantityName } from './units.ts';

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

/** A field that holds a quantity: a number in the canonical unit or a text with its unit. */
export function quantity(name: QuantityName, meaning: string, limits: QuantityLimits = {}) {
  return z
    .union([z.number(), z.string()], { error: () => wantedQuantity(name) })
    .transform((input, context): Reading => {
      const result = parseQuantity(input, name, limits);
      if ('reading' in result) return result.reading;
      refuse(context, result.fault);
      return z.NEVER;
    })
    .describe(meaning);
}

/**
 * A calendar day, `YYYY-MM-DD`. YAML readers of the older schema turn an unquoted day into a Date; it is the
 * same day. That a day is not in the future is checked where today is known (rules/days-not-ahead.ts).
 */
export function isoDate(meaning: string) {
  return z
    .preprocess(
      (value) => (value instanceof Date && !Number.isNaN(value.getTime()) ? value.toISOString().slice(0, 10) : value),
      z.iso.date({ error: () => 'a day as YYYY-MM-DD' }),
    )
    .describe(meaning);
}

/** A reference to another content file: its name without the ending. */
export function fileReference(meaning: string) {
  return notBlank().describe(meaning);
}

function notBlank() {
  return z.string().regex(/\S/, { error: () => 'a text that is not empty' });
}

/** A three-letter code of ISO 4217, as Intl knows them. */
export function currency(meaning: string) {
  return z
    .string()
    .refine((code) => Intl.supportedValuesOf('currency').includes(code), {
      error: 'a currency code of ISO 4217, such as EUR',
    })
    .describe(meaning);
}

/** A web address; only https and http, so that no script hides in a link. */
export function webAddress(meaning: string) {
  return z.url({ protocol: /^https?$/, error: () => 'a web address that starts with https://' }).describe(meaning);
}

/** A sentence or more. */
export function text(meaning: string) {
  return notBlank().describe(meaning);
}

/** One line. */
export function line(meaning: string, longest: number) {
  return notBlank()
    .max(longest, { error: () => `a text of at most ${longest} letters` })
    .describe(meaning);
}

/** What a name may be made of that is part of an address. */
export const SLUG = /^[a-z0-9]+(-[a-z0-9]+)*$/;

/** Names that an entry had before. */
export function formerNames(meaning: string) {
  const wanted = 'lower-case letters, digits and single hyphens, as in a name of before';
  return z
    .array(z.string().regex(SLUG, { error: () => wanted }))
    .min(1)
    .describe(meaning);
}

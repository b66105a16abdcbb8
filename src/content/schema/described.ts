import { z } from 'zod';

/**
 * What a field means, in short: for messages. Its `description`, which editors and new files show, says besides in which
 * unit and within which limits it is written.
 */
export const MEANINGS = z.registry<{ meaning: string }>();

/** Limits of a number, both ends taken in unless it says `above`. */
export interface Limits {
  min?: number | undefined;
  max?: number | undefined;
  /** Zero is refused too. */
  positive?: boolean | undefined;
}

/**
 * Gives a field its meaning, its description and what else JSON Schema can say of it.
 *
 * @param rule how it is written, as part of a sentence; nothing where the meaning says it all
 */
export function described<T extends z.ZodType>(
  schema: T,
  meaning: string,
  { rule, ...keywords }: { rule?: string; examples?: readonly unknown[] } & Record<string, unknown> = {},
): T {
  const description = rule ? `${meaning} ${rule.charAt(0).toUpperCase()}${rule.slice(1)}.` : meaning;
  MEANINGS.add(schema, { meaning });
  return schema.meta({ ...keywords, description }) as T;
}

/** `above 0, at most 500 kg`, `from 0 to 100`; empty where there is no limit. */
export function limitWords({ min, max, positive }: Limits, unit = ''): string {
  const of = (value: number) => `${value}${unit && ` ${unit}`}`;
  const above = positive && (min === undefined || min <= 0);
  if (above) return max === undefined ? 'above 0' : `above 0, at most ${of(max)}`;
  if (min !== undefined && max !== undefined) return `from ${min} to ${of(max)}`;
  if (min !== undefined) return `at least ${of(min)}`;
  return max === undefined ? '' : `at most ${of(max)}`;
}

import type { z } from 'zod';

/** What data came to when it was judged; let go as soon as it is taken, since whoever takes it may add to it. */
const known = new WeakMap<object, { schema: z.ZodType; parsed: z.ZodSafeParseResult<unknown> }>();

/** Holds data against a schema, and keeps what comes of it for `parsedBy`. */
export function judgedBy<T>(schema: z.ZodType<T>, data: object): z.ZodSafeParseResult<T> {
  const parsed = schema.safeParse(data);
  known.set(data, { schema, parsed });
  return parsed;
}

/** What data comes to by a schema: a file is held against it once as it is read, which tells its slips, and not again. */
export function parsedBy<T>(schema: z.ZodType<T>, data: object): z.ZodSafeParseResult<T> {
  const found = known.get(data);
  known.delete(data);
  return found?.schema === schema ? (found.parsed as z.ZodSafeParseResult<T>) : schema.safeParse(data);
}

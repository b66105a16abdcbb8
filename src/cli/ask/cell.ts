import { z } from 'zod';
import { dateHint } from '../../content/schema/date-hint.ts';

/** What was typed for one value, or what should have been typed instead. */
export type Cell<T> = { value: T } | { wanted: string; hint?: string };

/** A day, not after today. */
export function dayIn(text: string, today: string): Cell<string> {
  if (!z.iso.date().safeParse(text).success) {
    const hint = dateHint(text);
    return { wanted: 'a day as YYYY-MM-DD', ...(hint && { hint }) };
  }
  return text > today ? { wanted: `a day that is not in the future (today is ${today})` } : { value: text };
}
